package org.docksweep.kiosk.fleet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.SharedScatter;
import org.docksweep.gate.UnitScatter;
import org.docksweep.kiosk.dock.SmallHouse;
import org.junit.jupiter.api.Test;

/** What the dock judges by. */
class LocalFleetReferencesTest {
    private static final double[] NONE = {};
    private static final double TOLERANCE = 0.02;
    /** Units differ by a tenth of the tolerance, and their curves show it. */
    private static final double[] DEVIATIONS = {-0.003, 0.001, 0.002, -0.001, 0.001};

    private static PointReference tight(String model) {
        double information = 1e7;
        double[][] pulls = new double[DEVIATIONS.length][];
        for (int u = 0; u < pulls.length; u++) {
            pulls[u] = new double[] {information * DEVIATIONS[u]};
        }
        double[] tolerance = {TOLERANCE};
        return new PointReference(
                model,
                "IN",
                pulls.length,
                NONE,
                NONE,
                NONE,
                NONE,
                NONE,
                NONE,
                NONE,
                new PointReference.Taught(
                        List.of("LF.Re"),
                        new double[1],
                        tolerance,
                        NONE,
                        NONE,
                        NONE,
                        new UnitScatter(tolerance, new double[][] {{information}}, pulls)));
    }

    private static LocalFleet fleet(List<PointReference> references) {
        KioskSnapshot small = SmallHouse.snapshot();
        return new LocalFleet(
                new KioskSnapshot(
                        small.asOf(),
                        small.siteName(),
                        small.timeZone(),
                        small.book(),
                        List.of(),
                        references,
                        List.of(),
                        small.limits(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        null,
                        List.of()),
                List.of());
    }

    @Test
    void theDockJudgesByWhatAllReferencesSayTogether() {
        List<PointReference> taught = List.of(tight("ONE"), tight("BIA"));

        List<PointReference> references = fleet(taught).references();

        assertThat(references).isEqualTo(SharedScatter.over(taught));
        assertThat(references).allMatch(r -> r.taught().spread()[0] < TOLERANCE);
        assertThat(references.get(0).taught().spread()[0])
                .as("two models say more than one")
                .isLessThan(
                        fleet(taught.subList(0, 1)).references().get(0).taught().spread()[0]);
    }

    @Test
    void aNewCopyOfTheFleetWithTheSameReferencesLearnsNothingAnew() {
        List<PointReference> taught = List.of(tight("ONE"), tight("BIA"));

        assertThat(fleet(taught).references()).isSameAs(fleet(taught).references());
    }
}
