package org.docksweep.demo.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.docksweep.demo.DemoModels;
import org.docksweep.demo.physics.Fault;
import org.docksweep.demo.physics.FaultKind;
import org.docksweep.demo.physics.VirtualCabinet;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverPosition;
import org.docksweep.fleet.Enclosure;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.Feed;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.fleet.Way;
import org.docksweep.fleet.template.TwoWayTemplate;
import org.docksweep.gate.DrawingFit;
import org.docksweep.gate.Knowledge;
import org.docksweep.gate.ReferenceTeacher;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.suspect.Explanation;
import org.docksweep.suspect.SuspectRanking;
import org.docksweep.suspect.TeachingCheck;
import org.docksweep.suspect.TeachingProgress;
import org.docksweep.sweep.SweepAnalysis;
import org.junit.jupiter.api.Test;

/**
 * A manager who knows "two-way, 8 ohm, about 1.8 kHz, 12 dB" teaches a model that no book holds: the cabinets are made for
 * this test, with a Zobel network and other values than the template's, and measured through the rig.
 */
class TemplateTeachingTest {
    private static final long SEED = 400;
    private static final double NOISE_FS = 1e-5;
    /** Median of three units whose parts scatter by 3 %, and what the curve leaves open. */
    private static final double PART_SPREAD_PERCENT = 10;

    private static final StudyRig RIG = new StudyRig(SEED);
    private static final RigCalibration CALIBRATION = RIG.calibration(new SplittableRandom(SEED));

    private final ModelBook truth = truth();
    private final ModelBook drawing =
            new TwoWayTemplate("SAND10", "Sandbar 10", 8, 1800, 12, EnclosureKind.VENTED, 1, 8, 6).book();
    private final CabinetModel model = drawing.cabinetModel("SAND10");

    private static ModelBook truth() {
        List<NetworkElement> network = List.of(
                new NetworkElement.Inductor("L1", "in", "lf", 1.0e-3, 0.3, 0.03),
                new NetworkElement.Capacitor("C1", "lf", "0", 10e-6, 0.05, 0.03),
                new NetworkElement.Driver("DLF", "lf", "0", "LF"),
                new NetworkElement.Capacitor("C3", "in", "hp", 6.8e-6, 0.05, 0.03),
                new NetworkElement.Inductor("L2", "hp", "0", 0.82e-3, 0.35, 0.03),
                new NetworkElement.Resistor("R2", "hp", "hf", 4.7, 0.03),
                new NetworkElement.Resistor("R3", "hf", "0", 10, 0.03),
                new NetworkElement.Driver("DHF", "0", "hf", "HF"));
        CabinetModel cabinet = new CabinetModel(
                "SAND10",
                "Sandbar 10",
                Feed.PASSIVE,
                330,
                560,
                17,
                List.of(
                        new DriverPosition("HF", Way.HF, "PLOVER-34", 165, 110, 250, 150),
                        new DriverPosition("LF", Way.LF, "MARRAM-8", 165, 380, 250, 250)),
                List.of(
                        new Enclosure("horn", EnclosureKind.HORN, List.of("HF"), 0, 0, 0),
                        new Enclosure("box", EnclosureKind.VENTED, List.of("LF"), 1.3, 66, 7)),
                List.of(new TestPoint(
                        "IN",
                        TestPointKind.TERMINALS,
                        "1+ / 1-",
                        List.of("LF", "HF"),
                        8,
                        new LevelMask(List.of(new LevelMask.Point(20, 1), new LevelMask.Point(20_000, 1))),
                        network)));
        return new ModelBook(List.of(cabinet), DemoModels.book().driverModels());
    }

    private ReferenceTeacher.Unit sweep(int number, Fault fault) {
        VirtualCabinet good = VirtualCabinet.produced(truth, DemoModels.mechanics(), "SAND10", SEED + number, 2);
        VirtualCabinet cabinet = fault == null ? good : good.with(fault);
        SplittableRandom random = new SplittableRandom(SEED + number);
        SweepAnalysis analysis = RIG.sweep(
                RIG.plug(cabinet.load("IN"), model.testPoint("IN"), Plugging.contactOhm(random), random),
                NOISE_FS,
                random);
        assertThat(analysis.clean()).as("%s", analysis.issues()).isTrue();
        return new ReferenceTeacher.Unit(CALIBRATION.correct(analysis.impedance()), null, 20.0);
    }

    private TeachingProgress taughtBy(List<ReferenceTeacher.Unit> units) {
        return TeachingProgress.of(drawing, model, model.testPoint("IN"), units, true);
    }

    @Test
    void improvesWithEachUnitAndIsNotSpoiledByABadOneAmongThem() {
        List<ReferenceTeacher.Unit> units = new ArrayList<>();
        units.add(sweep(0, Fault.of(FaultKind.SHORTED_TURNS, "LF", 0.1)));
        int missedByOne = taughtBy(units).missed().size();
        units.add(sweep(1, null));
        units.add(sweep(2, null));
        TeachingProgress three = taughtBy(units);
        assertThat(three.doubts()).extracting(TeachingCheck.Doubt::unit).containsExactly(0);
        assertThat(three.grade()).isEqualTo(TeachingProgress.Grade.HARD_FAULTS);
        units.add(sweep(3, null));
        units.add(sweep(4, null));
        units.add(sweep(5, null));

        TeachingProgress six = taughtBy(units);

        assertThat(six.doubts()).extracting(TeachingCheck.Doubt::unit).containsExactly(0);
        assertThat(six.doubts().get(0).suspects().get(0).kind())
                .isEqualTo(org.docksweep.suspect.FaultKind.SHORTED_TURNS);
        assertThat(six.reference().unitCount()).isEqualTo(5);
        assertThat(six.grade()).isEqualTo(TeachingProgress.Grade.GOOD);
        assertThat(six.missed().size())
                .isLessThan(three.missed().size())
                .isLessThan(missedByOne)
                .isLessThan(6);
        assertThat(six.unfitted()).isLessThan(0.01);
        assertThat(six.unexplained()).isLessThan(six.unfitted());
        gatesOtherUnits(six);
    }

    /** The drawing as fitted and the reference together find and name what is wrong with units they have never seen. */
    private void gatesOtherUnits(TeachingProgress taught) {
        CabinetModel drawn = taught.book().cabinetModel("SAND10");
        Knowledge knowledge = Knowledge.nominal(taught.book(), drawn, drawn.testPoint("IN"))
                .taughtBy(taught.reference())
                .at(20.0);
        SuspectRanking ranking = new SuspectRanking(taught.book(), drawn, drawn.testPoint("IN"), knowledge);
        for (int unit = 20; unit < 24; unit++) {
            assertThat(ranking.explain(sweep(unit, null).impedance()).faultProbability())
                    .isLessThan(0.5);
            Explanation open = ranking.explain(
                    sweep(unit, new Fault(FaultKind.DRIVER_OPEN, "HF", 0)).impedance());
            assertThat(open.faultProbability()).isGreaterThan(0.99);
            assertThat(open.suspects().get(0).positionCode()).isEqualTo("HF");
            // C3 of the cabinet is the drawing's C2.
            Explanation half = ranking.explain(
                    sweep(unit, Fault.of(FaultKind.PART_DRIFT, "C3", 0.65)).impedance());
            assertThat(half.faultProbability()).isGreaterThan(0.99);
            assertThat(half.suspects().get(0).elementId()).isEqualTo("C2");
        }
    }

    @Test
    void findsADeadDriverInTheVeryFirstUnits() {
        List<ReferenceTeacher.Unit> units =
                List.of(sweep(0, new Fault(FaultKind.DRIVER_OPEN, "HF", 0)), sweep(1, null));

        TeachingProgress two = taughtBy(units);

        assertThat(two.doubts()).extracting(TeachingCheck.Doubt::unit).containsExactly(0);
        assertThat(two.doubts().get(0).suspects().get(0).positionCode()).isEqualTo("HF");
        assertThat(two.reference().unitCount()).isEqualTo(1);
    }

    @Test
    void givesTheDrawingTheValuesOfTheCabinets() {
        DrawingFit fit = new DrawingFit(drawing, model, model.testPoint("IN"));

        CabinetModel drawn = fit.redrawn(
                        List.of(fit.fit(sweep(1, null)), fit.fit(sweep(2, null)), fit.fit(sweep(3, null))))
                .cabinetModel("SAND10");

        assertThat(drawn.enclosures().get(1).tuningHz()).isCloseTo(66, withinPercentage(5));
        Map<String, Double> farad = new HashMap<>();
        drawn.testPoint("IN").elements().forEach(e -> {
            if (e instanceof NetworkElement.Capacitor c) {
                farad.put(c.id(), c.capacitanceF());
                assertThat(c.toleranceRel()).isLessThan(0.1);
            }
        });
        assertThat(farad.get("C1")).isCloseTo(10e-6, withinPercentage(PART_SPREAD_PERCENT));
        assertThat(farad.get("C2")).isCloseTo(6.8e-6, withinPercentage(PART_SPREAD_PERCENT));
    }
}
