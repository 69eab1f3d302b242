package org.docksweep.kiosk.proving;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.ServiceLoader;
import org.docksweep.contract.ProvingFault;
import org.docksweep.contract.ProvingFaultKind;
import org.docksweep.contract.ProvingGround;
import org.docksweep.contract.ProvingGround.Models;
import org.docksweep.contract.ProvingRig;
import org.docksweep.contract.ProvingUnit;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.ReferenceTeacher;
import org.docksweep.judge.CabinetJudgement;
import org.docksweep.judge.Judge;
import org.docksweep.judge.JudgeRequest;
import org.docksweep.judge.Prompt;
import org.docksweep.kiosk.dock.RealGate;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.sweep.RigException;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Two bi-amped models: the low frequency contacts of the one with a driver of half its impedance look much like those of the other,
 * whose two drivers lie in parallel. The high frequency contacts tell them apart.
 */
class WholeCabinetLabelTest {
    private static final String ONE_FIFTEEN = "DUNE15B";
    private static final String TWO_TWELVES = "JETTY212B";
    private static final ProvingUnit.Climate MILD = new ProvingUnit.Climate(26, 25, 25, 45);
    private static final RealGate GATE = new RealGate();

    private static ProvingRig rig;
    private static RigCalibration calibration;
    private static ModelBook book;
    private static final List<PointReference> REFERENCES = new ArrayList<>();

    @BeforeAll
    static void teachBoth() throws RigException {
        ProvingGround ground =
                ServiceLoader.load(ProvingGround.class).findFirst().orElseThrow();
        book = ground.book(Models.ALL, 0);
        rig = ground.rig(700_001, -106);
        calibration = Measured.calibrate(rig);
        for (String model : List.of(ONE_FIFTEEN, TWO_TWELVES)) {
            for (TestPoint point : book.cabinetModel(model).testPoints()) {
                List<ReferenceTeacher.Unit> good = new ArrayList<>();
                for (int n = 0; n < 3; n++) {
                    Measured m = Measured.clean(rig, calibration, "good-" + model + n, unit(model, n, null, 0), point);
                    good.add(new ReferenceTeacher.Unit(m.impedance(), m.acoustic(), m.ambientCelsius()));
                }
                REFERENCES.add(ReferenceTeacher.teach(book, model, point.code(), good));
            }
        }
    }

    @AfterAll
    static void close() {
        rig.close();
    }

    private static ProvingUnit unit(String model, long seed, ProvingFault fault, double severity) {
        return new ProvingUnit(model, 700_100 + seed, 1.5, fault, severity, MILD);
    }

    private static JudgeRequest.PointCapture swept(ProvingUnit unit, TestPoint point) throws RigException {
        rig.plug("return-" + unit.unitSeed(), unit, point.code());
        return new JudgeRequest.PointCapture(
                point.code(), rig.play(GATE.sweep(point, rig.sampleRateHz()), point.kind(), share -> {}));
    }

    private static CabinetJudgement judge(String label, ProvingUnit unit, String... points) throws RigException {
        CabinetModel model = book.cabinetModel(label);
        List<JudgeRequest.PointCapture> captures = new ArrayList<>();
        for (String point : points) {
            captures.add(swept(unit, model.testPoint(point)));
        }
        return Judge.judge(new JudgeRequest(
                book, model, captures, calibration::correct, REFERENCES, List.of(), LimitSet.initial()));
    }

    @Test
    void blamesTheDriverAndNotTheLabelWhenTheOtherContactsBearTheLabelOut() throws RigException {
        ProvingFault fault = new ProvingFault(ProvingFaultKind.WRONG_IMPEDANCE, "LF", List.of("LF"));
        int takenForTheOther = 0;
        for (int seed = 20; seed < 28; seed++) {
            ProvingUnit unit = unit(ONE_FIFTEEN, seed, fault, 0.5);
            takenForTheOther += judge(ONE_FIFTEEN, unit, "LF").prompt() == Prompt.CHECK_LABEL ? 1 : 0;

            CabinetJudgement whole = judge(ONE_FIFTEEN, unit, "LF", "HF");

            assertThat(whole.verdict()).isEqualTo(Verdict.FAIL);
            assertThat(whole.suspects().get(0).positionCode()).isEqualTo("LF");
        }
        assertThat(takenForTheOther).as("by these contacts alone").isPositive();
    }

    @Test
    void stillDoubtsTheLabelWhenAllContactsSpeakAgainstIt() throws RigException {
        for (int seed = 30; seed < 34; seed++) {
            CabinetJudgement whole = judge(ONE_FIFTEEN, unit(TWO_TWELVES, seed, null, 0), "LF", "HF");

            assertThat(whole.prompt()).isEqualTo(Prompt.CHECK_LABEL);
            assertThat(whole.reason().arguments())
                    .contains(book.cabinetModel(TWO_TWELVES).name());
        }
    }
}
