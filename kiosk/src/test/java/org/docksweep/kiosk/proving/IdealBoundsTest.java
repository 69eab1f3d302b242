package org.docksweep.kiosk.proving;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.ServiceLoader;
import java.util.Set;
import java.util.TreeMap;
import org.docksweep.contract.ProvingFaultKind;
import org.docksweep.contract.ProvingGround;
import org.docksweep.contract.ProvingGround.Models;
import org.docksweep.fleet.Verdict;
import org.docksweep.judge.Prompt;
import org.junit.jupiter.api.Test;

/** What {@code prove --at-best} prints beside the rows of a run. */
class IdealBoundsTest {
    /** Two plain models are enough; returns of all others have no bound then. */
    private static final Set<String> MODELS = Set.of("DUNE15B", "PEBL8");

    private static final ProvingOptions OPTIONS = Runs.of(Models.TUNING, 1, 800, 1);
    /** Too few for a true covariance; what is counted does not depend on it. */
    private static final int UNITS = 5;

    private static final List<ProvingFaultKind> SHOWN_BY_THE_CURRENT = List.of(
            ProvingFaultKind.CONTACT_RESISTANCE,
            ProvingFaultKind.SHORTED_TURNS,
            ProvingFaultKind.PART_OFF_VALUE,
            ProvingFaultKind.LEAK,
            ProvingFaultKind.PORT_BLOCKED,
            ProvingFaultKind.MAGNET_WEAK);

    private static final ProvingGround GROUND =
            ServiceLoader.load(ProvingGround.class).findFirst().orElseThrow();

    /** Every second return fails, the others pass, so that misses are known beforehand. */
    private static List<Outcome> outcomes() {
        List<Outcome> outcomes = new ArrayList<>();
        for (ReturnCase dealt : new CaseDealer(GROUND, OPTIONS).deal()) {
            Verdict verdict = dealt.index() % 2 == 0 ? Verdict.FAIL : Verdict.PASS;
            outcomes.add(new Outcome(
                    dealt,
                    verdict,
                    Prompt.NONE,
                    Prompt.NONE,
                    false,
                    1,
                    false,
                    false,
                    true,
                    Outcome.Naming.NONE,
                    "",
                    new Outcome.Plain(false, false, false),
                    null,
                    0));
        }
        return outcomes;
    }

    @Test
    void putsEveryReturnWhoseFaultTheCurrentShowsBesideItsBoundAndNoOther() {
        List<Outcome> outcomes = outcomes();
        Map<String, int[]> expected = new TreeMap<>();
        for (Outcome outcome : outcomes) {
            ReturnCase dealt = outcome.dealt();
            boolean bounded = !dealt.healthy()
                    && SHOWN_BY_THE_CURRENT.contains(dealt.fault().kind())
                    && MODELS.contains(dealt.labelModel());
            if (bounded) {
                int[] counts = expected.computeIfAbsent(
                        "soft " + dealt.knowing() + " " + dealt.fault().kind(), k -> new int[2]);
                counts[0]++;
                counts[1] += outcome.failed() ? 0 : 1;
            }
        }

        List<String> lines = IdealBounds.of(OPTIONS, UNITS, m -> MODELS.contains(m.code()))
                .beside(new ProvingReport(OPTIONS, outcomes, null, 0));

        Map<String, int[]> counted = new TreeMap<>();
        for (String line : lines.subList(2, lines.size())) {
            String[] cells = line.substring(36).strip().split(" +");
            int n = Integer.parseInt(cells[0]);
            int missed = Integer.parseInt(cells[1]);
            int beyond = Integer.parseInt(cells[2]);
            int beyondMissed = Integer.parseInt(cells[3]);
            double atBest = Double.parseDouble(cells[4]);
            double shared = Double.parseDouble(cells[5]);
            counted.put(line.substring(0, 36).strip(), new int[] {n, missed});
            assertThat(beyondMissed).as(line).isBetween(0, Math.min(beyond, missed));
            assertThat(beyond - beyondMissed).as(line).isBetween(0, n - missed);
            assertThat(atBest).as(line).isBetween(0.0, (double) n);
            assertThat(shared)
                    .as("looking for all faults finds no more: %s", line)
                    .isGreaterThanOrEqualTo(atBest);
        }
        assertThat(counted.keySet()).isEqualTo(expected.keySet()).hasSizeGreaterThanOrEqualTo(8);
        expected.forEach((row, counts) -> assertThat(counted.get(row)).as(row).containsExactly(counts[0], counts[1]));
    }
}
