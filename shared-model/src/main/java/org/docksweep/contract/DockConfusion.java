package org.docksweep.contract;

import java.time.Instant;
import java.util.List;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.suspect.FaultKind;

/**
 * What the dock guessed against what the bench found, over closed bench jobs with a finding.
 *
 * @param asOf when this was true
 * @param jobs jobs counted
 * @param placeFirst jobs whose first suspect was at the right place
 * @param placeInTwo jobs with the right place among the first two suspects
 * @param causeFirst jobs whose first suspect was at the right place and of a kind that the cause shows as
 * @param nothingFound jobs in which the bench found nothing wrong
 * @param placeFirstLower lower 95 % Wilson limit of the share with the right place first
 * @param placeFirstUpper upper limit
 * @param cells how often a guess met a finding, most frequent first
 */
public record DockConfusion(
        Instant asOf,
        int jobs,
        int placeFirst,
        int placeInTwo,
        int causeFirst,
        int nothingFound,
        double placeFirstLower,
        double placeFirstUpper,
        List<Cell> cells) {

    /**
     * One guess and one finding.
     *
     * @param guess first suspect of the dock, or null when it had none
     * @param found cause found
     * @param samePlace whether at the place the dock pointed to
     * @param count how often
     */
    public record Cell(FaultKind guess, ConfirmedCause found, boolean samePlace, int count) {}
}
