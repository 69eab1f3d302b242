package org.docksweep.demo.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import org.docksweep.demo.DemoModels;
import org.docksweep.demo.physics.Fault;
import org.docksweep.demo.physics.FaultKind;
import org.docksweep.demo.physics.VirtualCabinet;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.LimitSet;
import org.docksweep.judge.CabinetJudgement;
import org.docksweep.judge.Judge;
import org.docksweep.judge.JudgeRequest;
import org.docksweep.judge.JudgeRequest.PointCapture;
import org.docksweep.judge.Prompt;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CurveCorrection;
import org.docksweep.sweep.SweepPlans;
import org.junit.jupiter.api.Test;

/** A model that nobody has taught is never passed and never failed: a person decides, healthy or not. */
class UntaughtModelTest {
    private static final String MODEL = "PEBL8";
    private static final ModelBook BOOK = DemoModels.book();
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-03-14T01:30:00Z"), ZoneOffset.UTC);

    private static CabinetJudgement judged(VirtualCabinet cabinet) throws Exception {
        TestPoint point = BOOK.cabinetModel(MODEL).testPoints().get(0);
        VirtualRig rig = new VirtualRig(RigSettings.of(Map.of("seed", "5")), CLOCK);
        rig.plug("unit", cabinet, point.code());
        Capture capture = rig.play(SweepPlans.dock(point, rig.sampleRateHz()), TestPointKind.TERMINALS, s -> {});
        return Judge.judge(new JudgeRequest(
                BOOK,
                BOOK.cabinetModel(MODEL),
                List.of(new PointCapture(point.code(), capture)),
                CurveCorrection.NONE,
                List.of(),
                List.of(),
                LimitSet.initial()));
    }

    @Test
    void goesToAPersonWithoutAReference() throws Exception {
        VirtualCabinet good = VirtualCabinet.produced(BOOK, MODEL, 41, 2);
        for (VirtualCabinet cabinet : List.of(good, good.with(new Fault(FaultKind.DRIVER_OPEN, "HF", 0)))) {
            CabinetJudgement judgement = judged(cabinet);

            assertThat(judgement.verdict()).isEqualTo(Verdict.SWEEP_AGAIN);
            assertThat(judgement.prompt()).isEqualTo(Prompt.PERSON_DECIDES);
            assertThat(judgement.reason().key()).isEqualTo("judge-no-reference");
        }
    }
}
