package org.docksweep.demo.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.ServiceLoader;
import org.docksweep.contract.ProvingFault;
import org.docksweep.contract.ProvingFaultKind;
import org.docksweep.contract.ProvingGround;
import org.docksweep.contract.ProvingUnit;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Feed;
import org.docksweep.fleet.TestPoint;
import org.junit.jupiter.api.Test;

/** Severities must mean what the promised figures mean. */
class ProvingFaultsTest {
    private static final double[] NEARLY_DC = {0.01};
    private static final double MILLIOHM = 0.001;
    private static final ProvingUnit.Climate MILD = new ProvingUnit.Climate(20, 20, 20, 45);

    private final ProvingGround ground =
            ServiceLoader.load(ProvingGround.class).findFirst().orElseThrow();

    private ProvingFault fault(String model, ProvingFaultKind kind, String target) {
        return ground.faults(model).stream()
                .filter(f -> f.kind() == kind && f.target().equals(target))
                .findFirst()
                .orElseThrow();
    }

    private double dcOhm(String model, String point, ProvingFault fault, double severity) {
        return ground.impedanceOhm(new ProvingUnit(model, 7, 1, fault, severity, MILD), point, NEARLY_DC)[0][0];
    }

    @Test
    void addsAShareOfTheRatedCoilResistanceInSeries() {
        double healthy = dcOhm("DUNE15B", "LF", null, 0);
        double hurt = dcOhm("DUNE15B", "LF", fault("DUNE15B", ProvingFaultKind.CONTACT_RESISTANCE, "LF"), 0.10);

        assertThat(hurt - healthy).isCloseTo(0.10 * 5.6, within(MILLIOHM));
    }

    /** Severities are those of the way: of two equal coils in parallel one alone has to take more. */
    @Test
    void raisesTheResistanceOfAPairByTheShare() {
        double healthy = dcOhm("UNDR215", "IN", null, 0);
        double hurt = dcOhm("UNDR215", "IN", fault("UNDR215", ProvingFaultKind.CONTACT_RESISTANCE, "LF2"), 0.10);

        assertThat(ProvingFaults.contactShare(0.25, 2)).isCloseTo(2 / 3.0, within(1e-9));
        assertThat(ProvingFaults.contactShare(0.25, 1)).isCloseTo(0.25, within(1e-9));
        assertThat(ProvingFaults.contactShare(2, 2)).isCloseTo(49, within(1e-9));
        // the pair's own resistances differ from the rated ones, and the cable is a part of both
        assertThat(hurt / healthy).isCloseTo(1.10, within(0.006));
    }

    @Test
    void lowersTheSoundOfAPairByTheLoss() {
        for (double lossDb : new double[] {1, 3, 6}) {
            double one = Math.pow(10, -ProvingFaults.weakDb(lossDb, 2) / 20);
            assertThat(20 * Math.log10((1 + one) / 2)).isCloseTo(-lossDb, within(0.01));
        }
        assertThat(ProvingFaults.weakDb(3, 1)).isCloseTo(3, within(1e-9));
        assertThat(ProvingFaults.weakDb(9, 2)).isCloseTo(60, within(1e-9));
    }

    @Test
    void takesAShareOfTheTurnsAway() {
        double healthy = dcOhm("DUNE15B", "LF", null, 0);
        double hurt = dcOhm("DUNE15B", "LF", fault("DUNE15B", ProvingFaultKind.SHORTED_TURNS, "LF"), 0.05);

        assertThat(hurt).isCloseTo(0.95 * healthy, within(MILLIOHM));
    }

    /** Two equal coils in parallel, one open: the resistance doubles, but for the spread between the two. */
    @Test
    void opensOneOfTwo() {
        double healthy = dcOhm("UNDR215", "IN", null, 0);
        double hurt = dcOhm("UNDR215", "IN", fault("UNDR215", ProvingFaultKind.ONE_OF_TWO_OPEN, "LF2"), 0);

        assertThat(hurt / healthy).isCloseTo(2, within(0.06));
    }

    /** {@code 1/(Bl)^2} scales the motional impedance: at the resonance of a horn driver the rise over Re falls by 19 %. */
    @Test
    void weakensAMagnetByAShareOfItsForceFactor() {
        double[] atResonance = {560};
        double re = dcOhm("DUNE15B", "HF", null, 0);
        double healthy = ground.impedanceOhm(new ProvingUnit("DUNE15B", 7, 1, null, 0, MILD), "HF", atResonance)[0][0];
        ProvingFault weak = fault("DUNE15B", ProvingFaultKind.MAGNET_WEAK, "HF");
        double hurt = ground.impedanceOhm(new ProvingUnit("DUNE15B", 7, 1, weak, 0.10, MILD), "HF", atResonance)[0][0];

        assertThat((hurt - re) / (healthy - re)).isCloseTo(0.81, within(0.02));
    }

    @Test
    void sendsToTheDriversBehindAPart() {
        assertThat(fault("SPIN12", ProvingFaultKind.PART_OPEN, "C3").positionCodes())
                .containsExactly("HF");
        assertThat(fault("SPIN12", ProvingFaultKind.PART_OPEN, "C2").positionCodes())
                .containsExactly("LF");
        assertThat(fault("HEAD3", ProvingFaultKind.PART_OFF_VALUE, "L3").positionCodes())
                .containsExactly("MF");
        assertThat(fault("REEF212", ProvingFaultKind.PART_SHORTED, "C1").positionCodes())
                .containsExactlyInAnyOrder("LF1", "LF2");
    }

    @Test
    void actsAtTheContactsOrIsForTheMicrophoneAlone() {
        List<ProvingFaultKind> heardOnly =
                List.of(ProvingFaultKind.RUB, ProvingFaultKind.POLARITY, ProvingFaultKind.WAY_WEAK);
        double[] grid = new double[60];
        for (int i = 0; i < grid.length; i++) {
            grid[i] = 20 * Math.pow(1000, i / 59.0);
        }
        for (CabinetModel model : ground.book(ProvingGround.Models.ALL, 0).cabinetModels()) {
            for (ProvingFault fault : ground.faults(model.code())) {
                if (model.feed() != Feed.POWERED && !heardOnly.contains(fault.kind())) {
                    assertThat(largestChange(model, fault, grid))
                            .as(model.code() + " " + fault.kind() + " " + fault.target())
                            .isGreaterThan(0.003);
                }
            }
        }
    }

    private double largestChange(CabinetModel model, ProvingFault fault, double[] grid) {
        double severity = switch (fault.kind()) {
            case CONTACT_RESISTANCE, MAGNET_WEAK, SHORTED_TURNS, COIL_SHORTED, TERMINALS_SHORTED -> 0.1;
            case PART_OFF_VALUE -> 0.15;
            case LEAK, WRONG_IMPEDANCE -> 0.5;
            default -> 0;
        };
        double largest = 0;
        for (TestPoint point : model.testPoints()) {
            double[][] before =
                    ground.impedanceOhm(new ProvingUnit(model.code(), 7, 1, null, 0, MILD), point.code(), grid);
            double[][] after =
                    ground.impedanceOhm(new ProvingUnit(model.code(), 7, 1, fault, severity, MILD), point.code(), grid);
            for (int i = 0; i < grid.length; i++) {
                double change = Math.log(Math.hypot(after[0][i], after[1][i]) / Math.hypot(before[0][i], before[1][i]));
                largest = Math.max(largest, Math.abs(change));
            }
        }
        return largest;
    }
}
