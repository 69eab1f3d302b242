package org.docksweep.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.docksweep.acoustic.WayBand;
import org.docksweep.circuit.SampleCabinets;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverKind;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.DriverPosition;
import org.docksweep.fleet.Enclosure;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.Feed;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.MotionalResonance;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.fleet.Way;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WayBandsTest {
    private static WayBands bands(ModelBook book) {
        CabinetModel model = book.cabinetModels().get(0);
        return WayBands.of(book, model, model.testPoints().get(0));
    }

    /** A crossover at the usual place leaves the usual bands. */
    @Test
    void leavesTheBandsOfAUsualCrossover() {
        ModelBook book = SampleCabinets.twoWay();
        CabinetModel model = book.cabinetModels().get(0);
        assertThat(bands(book).levels())
                .isEqualTo(WayBand.of(model, model.testPoints().get(0)));
    }

    /**
     * First-order network into equal resistances, L / R = R C: both ways are 3 dB down, hence equal, at f = R / (2 pi L) (textbook). The bands
     * keep half an octave from it.
     */
    @ParameterizedTest
    @CsvSource({"500", "1000", "3000"})
    void keepsHalfAnOctaveFromTheCrossover(double crossoverHz) {
        double omega = 2 * Math.PI * crossoverHz;
        WayBands both = bands(twoCones(6 / omega, 1 / (6 * omega)));
        List<WayBand> bands = both.levels();
        double step = Math.pow(2, 1.0 / 12);
        assertThat(bands.get(0).toHz())
                .isCloseTo(Math.min(800, crossoverHz / Math.sqrt(2)), within(0.04 * crossoverHz * step));
        assertThat(bands.get(1).fromHz())
                .isCloseTo(Math.max(3000, crossoverHz * Math.sqrt(2)), within(0.06 * crossoverHz * step));
        assertThat(both.phases().get(0).toHz())
                .isCloseTo(crossoverHz / Math.sqrt(2), within(0.04 * crossoverHz * step));
        assertThat(both.phases().get(1).fromHz())
                .isCloseTo(crossoverHz * Math.sqrt(2), within(0.06 * crossoverHz * step));
    }

    /** Two cones whose motion is far below the crossover. */
    private static ModelBook twoCones(double henry, double farad) {
        DriverModel cone = new DriverModel(
                "CONE",
                "cone driver without inductance",
                DriverKind.CONE,
                8,
                6,
                1e-6,
                0.7,
                List.of(new MotionalResonance(20, 2, 4)),
                null,
                List.of());
        CabinetModel cabinet = new CabinetModel(
                "TWO",
                "two cones",
                Feed.PASSIVE,
                400,
                650,
                24,
                List.of(
                        new DriverPosition("LF", Way.LF, "CONE", 200, 430, 300, 300),
                        new DriverPosition("HF", Way.HF, "CONE", 200, 150, 150, 150)),
                List.of(
                        new Enclosure("BOX", EnclosureKind.FREE_AIR, List.of("LF"), 0, 0, 0),
                        new Enclosure("TOP", EnclosureKind.FREE_AIR, List.of("HF"), 0, 0, 0)),
                List.of(new TestPoint(
                        "IN",
                        TestPointKind.TERMINALS,
                        "1+ / 1-",
                        List.of("LF", "HF"),
                        8,
                        new LevelMask(List.of(new LevelMask.Point(20, 1.5), new LevelMask.Point(20_000, 1.5))),
                        List.of(
                                new NetworkElement.Inductor("L1", "in", "low", henry, 0.01, 0.03),
                                new NetworkElement.Driver("W1", "low", "0", "LF"),
                                new NetworkElement.Capacitor("C1", "in", "high", farad, 0.01, 0.03),
                                new NetworkElement.Driver("W2", "high", "0", "HF")))));
        return new ModelBook(List.of(cabinet), List.of(cone));
    }
}
