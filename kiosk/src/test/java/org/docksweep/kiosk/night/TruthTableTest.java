package org.docksweep.kiosk.night;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.docksweep.contract.DemoHouse.Kind;
import org.docksweep.contract.DemoHouse.Truth;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Route;
import org.docksweep.judge.Prompt;
import org.docksweep.kiosk.night.TruthTable.Match;
import org.docksweep.kiosk.proving.Wilson;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.Suspect;
import org.junit.jupiter.api.Test;

class TruthTableTest {
    private static final Reason WORD = Reason.of("dock-scan-read", "x");

    @Test
    void callsAHardFaultOnTheShelfOrOnHoldMissed() {
        assertThat(match(Kind.HARD_FAULT, "HF", Route.SHELF, null)).isEqualTo(Match.WRONG);
        assertThat(match(Kind.HARD_FAULT, "HF", Route.MANUAL_HOLD, null)).isEqualTo(Match.WRONG);
        assertThat(match(Kind.HARD_FAULT, "HF", Route.BENCH, "HF")).isEqualTo(Match.RIGHT);
        assertThat(match(Kind.HARD_FAULT, "HF", Route.BENCH, "LF")).isEqualTo(Match.OTHER_POSITION);
        assertThat(match(Kind.HARD_FAULT, "HF", Route.BENCH, null)).isEqualTo(Match.POSITION_NOT_NAMED);
    }

    @Test
    void takesEitherOfTwoSuspectsThatCannotBeToldApart() {
        List<Suspect> suspects = List.of(suspect("LF1", 0.5), suspect("LF2", 0.5));
        assertThat(TruthTable.match(new Truth(Kind.HARD_FAULT, "LF2", ""), Route.BENCH, "LF1", suspects, List.of()))
                .isEqualTo(Match.RIGHT);
        List<Suspect> clear = List.of(suspect("LF1", 0.9), suspect("LF2", 0.1));
        assertThat(TruthTable.match(new Truth(Kind.HARD_FAULT, "LF2", ""), Route.BENCH, "LF1", clear, List.of()))
                .isEqualTo(Match.OTHER_POSITION);
    }

    @Test
    void demandsTheShelfForHealthyOnesAndThePromptForTheRest() {
        assertThat(match(Kind.HEALTHY, null, Route.BENCH, null)).isEqualTo(Match.WRONG);
        assertThat(match(Kind.HEALTHY, null, Route.MANUAL_HOLD, null)).isEqualTo(Match.WRONG);
        assertThat(match(Kind.VISUAL_SAFETY, null, Route.MANUAL_HOLD, null)).isEqualTo(Match.WRONG);
        assertThat(match(Kind.WRONG_LABEL, null, Route.MANUAL_HOLD, null)).isEqualTo(Match.WRONG);
        assertThat(match(Kind.WRONG_LABEL, null, Route.MANUAL_HOLD, null, Prompt.CHECK_LABEL))
                .isEqualTo(Match.RIGHT);
        assertThat(match(Kind.NOT_PLUGGED, null, Route.SHELF, null)).isEqualTo(Match.WRONG);
        assertThat(match(Kind.NOT_PLUGGED, null, Route.SHELF, null, Prompt.PLUG_IN))
                .isEqualTo(Match.RIGHT);
    }

    /** Limits for 0 of 10 and 5 of 10, computed by hand from Wilson's formula. */
    @Test
    void drawsWilsonLimits() {
        assertThat(Wilson.of(0, 10).low()).isZero();
        assertThat(Wilson.of(0, 10).high()).isCloseTo(0.2775, within(0.0001));
        assertThat(Wilson.of(5, 10).low()).isCloseTo(0.2366, within(0.0001));
        assertThat(Wilson.of(5, 10).high()).isCloseTo(0.7634, within(0.0001));
        // z^2 / (n + z^2) with z^2 = 2.7055: the fewest returns without a miss that show 0.1 %
        assertThat(Wilson.upperOneSided(0, 2703)).isLessThan(0.001);
        assertThat(Wilson.upperOneSided(0, 2702)).isGreaterThan(0.001);
    }

    private static Match match(Kind kind, String truly, Route route, String named, Prompt... prompts) {
        return TruthTable.match(new Truth(kind, truly, ""), route, named, List.of(), List.of(prompts));
    }

    private static Suspect suspect(String position, double probability) {
        return new Suspect(FaultKind.DRIVER_OPEN, "IN", position, null, probability, WORD, WORD);
    }
}
