package org.docksweep.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
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

class TouchingPlacesTest {
    private static TouchingPlaces places(ModelBook book) {
        CabinetModel model = book.cabinetModels().get(0);
        return new TouchingPlaces(book, model, model.testPoints().get(0));
    }

    /** Whoever touches, touches somewhere in the sweep. */
    @Test
    void spreadsEveryDriverOverTheSweepOnce() {
        TouchingPlaces places = places(SampleCabinets.twoWay());
        double nepers = Math.log(20_000 / 10.0);
        assertThat(places.positions()).containsExactlyInAnyOrder("HF1", "LF1");
        for (String position : places.positions()) {
            assertThat(places.ofDriver(position, 10, 20_000) * nepers).isCloseTo(1, within(0.02));
        }
    }

    @ParameterizedTest
    @CsvSource({"20,60,LF1,HF1", "600,1200,HF1,LF1"})
    void expectsTheDriverThatTravelsThere(double fromHz, double toHz, String moves, String rests) {
        TouchingPlaces places = places(SampleCabinets.twoWay());
        assertThat(places.ofDriver(moves, fromHz, toHz)).isGreaterThan(10 * places.ofDriver(rests, fromHz, toHz));
        assertThat(places.ofDriver(moves, fromHz, toHz)).isGreaterThan(places.ofLoosePart(fromHz, toHz));
    }

    /**
     * A middle cone in a pod that resonates at 85 Hz (55 Hz, alpha 1.4) behind one capacitor travels most about there, three octaves below where
     * it speaks; the low one, in its closed box, below that.
     */
    @Test
    void expectsAMiddleConeAtTheResonanceOfItsPod() {
        TouchingPlaces places = places(threeWay());
        assertThat(places.ofDriver("MF", 70, 100)).isGreaterThan(2 * places.ofDriver("LF", 70, 100));
        assertThat(places.ofDriver("LF", 20, 40)).isGreaterThan(5 * places.ofDriver("MF", 20, 40));
    }

    private static ModelBook threeWay() {
        DriverModel low = cone("LOW", 30, 0.03);
        DriverModel middle = cone("MIDDLE", 55, 0.005);
        CabinetModel cabinet = new CabinetModel(
                "THREE",
                "two ways of a three-way cabinet",
                Feed.PASSIVE,
                400,
                650,
                24,
                List.of(
                        new DriverPosition("LF", Way.LF, "LOW", 200, 430, 300, 300),
                        new DriverPosition("MF", Way.MF, "MIDDLE", 200, 150, 150, 150)),
                List.of(
                        new Enclosure("BOX", EnclosureKind.CLOSED, List.of("LF"), 1.5, 0, 7),
                        new Enclosure("POD", EnclosureKind.CLOSED, List.of("MF"), 1.4, 0, 7)),
                List.of(new TestPoint(
                        "IN",
                        TestPointKind.TERMINALS,
                        "1+ / 1-",
                        List.of("LF", "MF"),
                        8,
                        new LevelMask(List.of(new LevelMask.Point(20, 1.5), new LevelMask.Point(20_000, 1.5))),
                        List.of(
                                new NetworkElement.Driver("W1", "in", "0", "LF"),
                                new NetworkElement.Capacitor("C1", "in", "mid", 33e-6, 0.05, 0.03),
                                new NetworkElement.Driver("W2", "mid", "0", "MF")))));
        return new ModelBook(List.of(cabinet), List.of(low, middle));
    }

    private static DriverModel cone(String code, double freeHz, double lossyInductanceK) {
        return new DriverModel(
                code,
                "cone driver",
                DriverKind.CONE,
                8,
                5.6,
                lossyInductanceK,
                0.68,
                List.of(new MotionalResonance(freeHz, 5, 70)),
                null,
                List.of());
    }
}
