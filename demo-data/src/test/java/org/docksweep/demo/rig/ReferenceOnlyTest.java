package org.docksweep.demo.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.docksweep.demo.DemoModels;
import org.docksweep.demo.drawn.DrawnFleet;
import org.docksweep.demo.physics.DriverMechanics;
import org.docksweep.demo.physics.Fault;
import org.docksweep.demo.physics.FaultKind;
import org.docksweep.demo.physics.VirtualCabinet;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.Knowledge;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.suspect.Explanation;
import org.docksweep.suspect.Suspect;
import org.docksweep.suspect.SuspectRanking;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.json.JsonMapper;

/** Virtual cabinets without a baseline, judged with a reference of five units. Tuning models and seeds. */
class ReferenceOnlyTest {
    private static final double LIMIT = LimitSet.initial().failProbability(false);
    private static final double WATCH = LimitSet.initial().watchProbability();

    /** One test point of a house, taught by five units. */
    private static final class Taught {
        private final GateStudy study;
        private final ModelBook book;
        private final Map<String, DriverMechanics> mechanics;
        private final CabinetModel model;
        private final TestPoint point;
        private final Knowledge knowledge;
        private final long seed;

        Taught(long seed, ModelBook book, Map<String, DriverMechanics> mechanics, String model) {
            this.seed = seed;
            this.study = new GateStudy(seed, book, mechanics);
            this.book = book;
            this.mechanics = mechanics;
            this.model = book.cabinetModel(model);
            this.point = this.model.testPoint("IN");
            this.knowledge =
                    Knowledge.nominal(book, this.model, point).taughtBy(study.teach(this.model, point, seed, 5));
        }

        Taught(long seed, ModelBook book, Map<String, DriverMechanics> mechanics, PointReference reference) {
            this.seed = seed;
            this.study = new GateStudy(seed, book, mechanics);
            this.book = book;
            this.mechanics = mechanics;
            this.model = book.cabinetModel(reference.cabinetModelCode());
            this.point = this.model.testPoint(reference.testPointCode());
            this.knowledge = Knowledge.nominal(book, this.model, point).taughtBy(reference);
        }

        static Taught drawn(long seed, int number) {
            DrawnFleet fleet = DrawnFleet.of(seed);
            return new Taught(seed, fleet.book(), fleet.mechanics(), "M" + seed + "-" + number);
        }

        Explanation explain(int unit, Fault fault) {
            VirtualCabinet cabinet =
                    VirtualCabinet.produced(book, mechanics, model.code(), seed + 10 + unit, 3 + unit % 5);
            GateStudy.Taken taken = study.sweep(fault == null ? cabinet : cabinet.with(fault), point);
            return new SuspectRanking(book, model, point, knowledge.at(taken.ambientCelsius())).explain(taken.curve());
        }
    }

    private static String first(Explanation explanation) {
        Suspect first = explanation.suspects().get(0);
        return first.kind() + " " + first.elementId();
    }

    @Test
    void aResistorOffItsValueIsNotPutDownToTheLossesOfTheCapacitorBesideIt() {
        Taught taught = new Taught(5, DemoModels.book(), DemoModels.mechanics(), "HEAD3");
        for (int unit = 0; unit < 6; unit++) {
            for (double off : new double[] {0.65, 1.35}) {
                Explanation explanation = taught.explain(unit, Fault.of(FaultKind.PART_DRIFT, "R1", off));

                assertThat(explanation.faultProbability())
                        .as("unit %d, R1 times %.2f", unit, off)
                        .isGreaterThan(LIMIT);
                assertThat(first(explanation)).isEqualTo("PART_DRIFTED R1");
            }
        }
    }

    @Test
    void anOpenCapacitorIsNotAHealthyOneWithAThousandOhmOfLosses() {
        Explanation explanation = Taught.drawn(45, 4).explain(0, Fault.of(FaultKind.PART_OPEN, "C4"));

        assertThat(explanation.faultProbability()).isGreaterThan(0.99);
        assertThat(explanation.suspects().subList(0, 2))
                .extracting(Suspect::kind)
                .containsOnly(org.docksweep.suspect.FaultKind.PART_OPEN);
    }

    /** A reference that judge version 9 taught, of the same virtual house: written by that version, not made for this test. */
    @Test
    void whatAnOlderJudgeTaughtIsStillUnderstood() throws IOException {
        PointReference[] older;
        try (InputStream file = getClass().getResourceAsStream("references-of-judge-9.json")) {
            older = new JsonMapper().readValue(file, PointReference[].class);
        }
        assertThat(older[0].taught().parameterIds()).contains("C1.esr", "HF.R1");
        Taught taught = new Taught(5, DemoModels.book(), DemoModels.mechanics(), older[0]);

        for (int unit = 0; unit < 8; unit++) {
            assertThat(taught.explain(unit, null).faultProbability())
                    .as("healthy unit %d", unit)
                    .isLessThan(LIMIT);
            assertThat(taught.explain(unit, Fault.of(FaultKind.PART_DRIFT, "C1", 0.65))
                            .faultProbability())
                    .as("unit %d with C1 off", unit)
                    .isGreaterThan(LIMIT);
        }
    }

    /** The box's wall of this drawn model rings beside its cone's upper peak, at each unit elsewhere. */
    @Test
    void aWallThatRingsElsewhereThanThoseOfFiveUnitsIsWatchedAndNotFailed() {
        Taught taught = Taught.drawn(42, 18);
        List<Explanation> ringing = new ArrayList<>();
        int failedOtherwise = 0;
        for (int unit = 0; unit < 60; unit++) {
            Explanation explanation = taught.explain(unit, null);
            assertThat(explanation.reducedChi2())
                    .as("unit %d", unit)
                    .isLessThan(LimitSet.initial().misfitLimit());
            if (explanation.healthyReducedChi2() > 4) {
                ringing.add(explanation);
            } else if (explanation.faultProbability() >= LIMIT) {
                failedOtherwise++;
            }
        }
        assertThat(ringing)
                .hasSizeBetween(1, 12)
                .allSatisfy(e -> assertThat(e.faultProbability())
                        .isGreaterThanOrEqualTo(WATCH)
                        .isLessThan(LIMIT));
        // a healthy unit in some hundred looks like a weak magnet to a reference of five units, ringing or not
        assertThat(failedOtherwise).isLessThanOrEqualTo(1);
    }
}
