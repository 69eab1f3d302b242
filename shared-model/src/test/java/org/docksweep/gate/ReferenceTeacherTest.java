package org.docksweep.gate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.circuit.CircuitFault;
import org.docksweep.circuit.SampleCabinets;
import org.docksweep.fleet.ModelBook;
import org.docksweep.sweep.FrequencyGrid;
import org.docksweep.sweep.ImpedanceCurve;
import org.junit.jupiter.api.Test;

class ReferenceTeacherTest {
    private static final long SEED = 300;
    private static final CircuitFault HORN_OPEN = new CircuitFault(CircuitFault.Kind.DRIVER_OPEN, "HF1");
    private final ModelBook book = SampleCabinets.twoWay();

    @Test
    void worksFromOneUnitAndNarrowsWithFive() {
        PointReference one = ReferenceTeacher.teach(book, "TWO", "IN", good(1));
        PointReference five = ReferenceTeacher.teach(book, "TWO", "IN", good(5));
        assertThat(one.unitCount()).isEqualTo(1);
        assertThat(mean(five.taught().offsetSigma()))
                .isLessThan(mean(one.taught().offsetSigma()));
    }

    /** One bad unit among the good must not spoil the reference. */
    @Test
    void keepsItsMeanWithOneBadUnitAmongSix() {
        List<ReferenceTeacher.Unit> spoiled = new ArrayList<>(good(5));
        spoiled.add(DrawnUnits.unit(book, HORN_OPEN, 0, SEED + 99));
        PointReference clean = ReferenceTeacher.teach(book, "TWO", "IN", good(5));
        PointReference dirty = ReferenceTeacher.teach(book, "TWO", "IN", spoiled);
        double furthest = 0;
        for (int i = 0; i < clean.meanLogOhm().length; i++) {
            furthest = Math.max(furthest, Math.abs(clean.meanLogOhm()[i] - dirty.meanLogOhm()[i]));
        }
        // An open horn driver moves the curve by up to a factor of two; its pull on the reference stays below 0.9 dB.
        assertThat(furthest).isLessThan(0.1);
    }

    @Test
    void learnsTheCircuitWithinItsTolerances() {
        PointReference reference = ReferenceTeacher.teach(book, "TWO", "IN", good(8));
        int re = reference.taught().parameterIds().indexOf("LF1.Re");
        assertThat(Math.exp(reference.taught().mean()[re])).isCloseTo(5.6, within(0.25));
    }

    @Test
    void refusesNoUnitsAndNamesTheModel() {
        assertThatThrownBy(() -> ReferenceTeacher.teach(book, "TWO", "IN", List.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("TWO")
                .hasMessageContaining("1 to 20");
    }

    @Test
    void refusesUnitsOverDifferentBands() {
        List<ReferenceTeacher.Unit> units = new ArrayList<>(good(1));
        double[] grid = FrequencyGrid.within(100, 1000);
        double[] ohm = new double[grid.length];
        java.util.Arrays.fill(ohm, 8);
        units.add(new ReferenceTeacher.Unit(new ImpedanceCurve(grid, ohm, new double[grid.length], ohm), null, null));
        assertThatThrownBy(() -> ReferenceTeacher.teach(book, "TWO", "IN", units))
                .hasMessageContaining("different bands");
    }

    private List<ReferenceTeacher.Unit> good(int count) {
        List<ReferenceTeacher.Unit> units = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            units.add(DrawnUnits.unit(book, CircuitFault.NONE, 0, SEED + i));
        }
        return units;
    }

    private static double mean(double[] values) {
        return java.util.Arrays.stream(values).average().orElseThrow();
    }
}
