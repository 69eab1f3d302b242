package org.docksweep.kiosk.night;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.docksweep.contract.DemoHouse;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.BareDriver;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverBenchData;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.judge.CabinetJudgement;
import org.docksweep.judge.JudgeRequest;
import org.docksweep.judge.Prompt;
import org.docksweep.kiosk.dock.Gate;
import org.docksweep.kiosk.dock.RealGate;
import org.docksweep.kiosk.rig.RigDay;
import org.docksweep.kiosk.rig.Rigs;
import org.docksweep.kiosk.rig.StandardSet;
import org.docksweep.suspect.FaultKind;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CurveCorrection;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepAnalysis;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Bare drivers of the demo house on the bench rig, judged by what five known-good ones taught. */
class BenchLessonsTest {
    /** Seed of the night that the other tests take, too: what its cabinets have is in its truth table. */
    private static final long SEED = 3;

    private static final List<String> DRIVERS = List.of("TERN-44", "GULL-75", "DUNE-15");
    private static final Gate GATE = new RealGate();

    private static DemoHouse house;
    private static PracticeRig rig;
    private static CurveCorrection correction;
    private static List<PointReference> references;
    private static ModelBook bare;

    @BeforeAll
    static void teaches() throws RigException {
        house = some(HouseLoader.house(SEED));
        rig = (PracticeRig) Rigs.open("virtual", Map.of("seed", Long.toString(SEED), "moment", "at-return"));
        correction = new RigDay(rig, GATE, StandardSet.practice(), Clock.systemUTC())
                .calibrateAndCheck(ZoneOffset.UTC)
                .standing()
                .correction();
        references = new BenchLessons(
                        house, GATE, correction, Map.of("seed", Long.toString(SEED), "moment", "before-hire"))
                .teach();
        bare = BareDriver.book(
                house.book().driverModels(),
                house.bench().benchData().stream()
                        .collect(Collectors.toMap(DriverBenchData::driverModelCode, DriverBenchData::benchLevelMask)));
    }

    /** The same house, of whose drivers the bench knows three. */
    private static DemoHouse some(DemoHouse all) {
        return new DemoHouse(
                all.siteName(),
                all.timeZone(),
                all.ambientCelsius(),
                all.book(),
                all.cabinets(),
                all.pastEvents(),
                all.returnList(),
                all.dispatches(),
                all.referenceUnits(),
                all.dockHand(),
                all.arrivals(),
                new DemoHouse.Bench(
                        all.bench().technician(),
                        all.bench().benchData().stream()
                                .filter(d -> DRIVERS.contains(d.driverModelCode()))
                                .toList(),
                        all.bench().parts(),
                        all.bench().stock()));
    }

    @AfterAll
    static void closes() {
        rig.close();
    }

    private static Capture sweep(String label, String position, TestPoint point) throws RigException {
        rig.plugDriver(new AssetTag(label), position);
        return rig.play(GATE.sweep(point, rig.sampleRateHz()), point.kind(), share -> {});
    }

    private static CabinetJudgement judge(String label, String position, String as, List<PointReference> known)
            throws RigException {
        CabinetModel model = bare.cabinetModel(BareDriver.modelCode(as));
        Capture capture = sweep(label, position, model.testPoint(BareDriver.TEST_POINT));
        return GATE.judge(new JudgeRequest(
                bare,
                model,
                List.of(new JudgeRequest.PointCapture(BareDriver.TEST_POINT, capture)),
                correction,
                known,
                List.of(),
                LimitSet.initial()));
    }

    @Test
    void teachesEveryDriverModelFromFiveDriversThatAreNotOnTheTruck() {
        assertThat(references)
                .extracting(PointReference::cabinetModelCode)
                .containsExactlyInAnyOrder("BARE-TERN-44", "BARE-GULL-75", "BARE-DUNE-15");
        assertThat(references).allSatisfy(r -> {
            assertThat(r.testPointCode()).isEqualTo(BareDriver.TEST_POINT);
            assertThat(r.unitCount()).isEqualTo(BenchLessons.DRIVERS);
        });
    }

    @Test
    void passesTheDriversOfCabinetsThatCameBackHealthy() throws RigException {
        assertThat(judge("MCH-000131", "HF", "TERN-44", references).verdict()).isEqualTo(Verdict.PASS);
        assertThat(judge("MCH-000143", "HF", "GULL-75", references).verdict()).isEqualTo(Verdict.PASS);
        assertThat(judge("MCH-000143", "LF", "DUNE-15", references).verdict()).isEqualTo(Verdict.PASS);
    }

    /** The gate at the dock sees no impedance of a powered cabinet; the bench rig does, and clears the driver. */
    @Test
    void clearsTheDriverOfAPoweredCabinetWhoseAmplifierIsDead() throws RigException {
        assertThat(judge("MCH-000220", "HF", "TERN-44", references).verdict()).isEqualTo(Verdict.PASS);
    }

    @Test
    void failsADiaphragmOfHalfTheRatedImpedanceAndNamesIt() throws RigException {
        CabinetJudgement judgement = judge("MCH-000128", "HF", "TERN-44", references);

        assertThat(judgement.verdict()).isEqualTo(Verdict.FAIL);
        assertThat(judgement.suspects().get(0).kind()).isEqualTo(FaultKind.WRONG_IMPEDANCE_PART);
    }

    @Test
    void failsAShortedCoil() throws RigException {
        CabinetJudgement judgement = judge("MCH-000150", "LF", "DUNE-15", references);

        assertThat(judgement.verdict()).isEqualTo(Verdict.FAIL);
        assertThat(judgement.suspects()).extracting(s -> s.kind()).contains(FaultKind.DRIVER_SHORTED);
    }

    @Test
    void neverPassesAnOpenCoilAndPassesItOnceItIsMended() throws RigException {
        TestPoint point = bare.cabinetModel(BareDriver.modelCode("GULL-75")).testPoint(BareDriver.TEST_POINT);
        assertThat(GATE.analyse(sweep("MCH-000154", "HF", point)).load()).isEqualTo(SweepAnalysis.Load.OPEN);
        assertThat(judge("MCH-000154", "HF", "GULL-75", references).verdict()).isNotEqualTo(Verdict.PASS);

        rig.repair(new AssetTag("MCH-000154"));

        assertThat(judge("MCH-000154", "HF", "GULL-75", references).verdict()).isEqualTo(Verdict.PASS);
    }

    @Test
    void knowsAnotherDriverByItsCurve() throws RigException {
        CabinetJudgement judgement = judge("MCH-000143", "HF", "TERN-44", references);

        assertThat(judgement.verdict()).isEqualTo(Verdict.SWEEP_AGAIN);
        assertThat(judgement.prompt()).isEqualTo(Prompt.CHECK_LABEL);
        assertThat(judgement.reason().arguments())
                .contains(house.book().driverModel("GULL-75").name());
    }

    @Test
    void passesNothingWithoutAReferenceAndSaysSo() throws RigException {
        CabinetJudgement judgement = judge("MCH-000131", "HF", "TERN-44", List.of());

        assertThat(judgement.verdict()).isEqualTo(Verdict.SWEEP_AGAIN);
        assertThat(judgement.prompt()).isEqualTo(Prompt.PERSON_DECIDES);
        assertThat(judgement.reason().key()).isEqualTo("judge-no-reference");
    }
}
