package org.docksweep.demo.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.OutputStream;
import java.io.PrintStream;
import java.util.Map;
import java.util.Optional;
import org.docksweep.demo.physics.Fault;
import org.docksweep.demo.physics.FaultKind;
import org.docksweep.demo.physics.VirtualCabinet;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Baseline;
import org.docksweep.judge.CabinetJudgement;
import org.docksweep.judge.Prompt;
import org.docksweep.rigcal.RigRepeatability;
import org.docksweep.sweep.RigException;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A small {@link MicrophoneStudy}, and what the gate says when the sound is the cabinet's or the hall's fault. */
class MicrophoneStudyTest {
    private static MicrophoneScene passive;
    private static MicrophoneScene powered;
    private static VirtualCabinet passiveUnit;
    private static VirtualCabinet poweredUnit;
    private static Baseline passiveBaseline;
    private static Baseline poweredBaseline;

    @BeforeAll
    static void teach() throws RigException {
        passive = new MicrophoneScene("SPIN12", "IN", 1);
        powered = new MicrophoneScene("SALT12A", "LINE", 1);
        passiveUnit = passive.unit(21);
        poweredUnit = powered.unit(22);
        passiveBaseline = passive.baseline(passiveUnit, "unit-21");
        poweredBaseline = powered.baseline(poweredUnit, "unit-22");
    }

    private static CabinetJudgement passive(Fault fault, Disturbance... spoiled) throws RigException {
        return passive.judge(
                passive.capture("unit-21", passive.with(passiveUnit, fault), "45", 0, spoiled), passiveBaseline);
    }

    private static CabinetJudgement powered(Fault fault, Disturbance... spoiled) throws RigException {
        return powered.judge(
                powered.capture("unit-22", powered.with(poweredUnit, fault), "45", 0, spoiled), poweredBaseline);
    }

    @Test
    void noiseAloneNeverFails() throws RigException {
        PrintStream nowhere = new PrintStream(OutputStream.nullOutputStream());
        Map<Verdict, Integer> verdicts = new MicrophoneStudy(nowhere, 3, "SALT12A/LINE").noise(16);
        assertThat(verdicts).doesNotContainKey(Verdict.FAIL).containsKey(Verdict.PASS);
    }

    @Test
    void passesHealthyCabinets() throws RigException {
        assertThat(passive(null).verdict()).isEqualTo(Verdict.PASS);
        assertThat(powered(null).verdict()).isEqualTo(Verdict.PASS);
        assertThat(powered(null).reason().key()).isEqualTo("verdict-pass-powered");
    }

    @Test
    void saysHowFarOffItsPlaceACabinetStandsAndComparesLessClosely() throws RigException {
        CabinetJudgement farther = passive(null, Disturbance.MIC_MOVED);
        assertThat(farther.verdict()).as("%s", farther.reason()).isEqualTo(Verdict.PASS);
        assertThat(farther.reason().key()).isEqualTo("verdict-pass-farther");
        // 0.3 m, and two placements of up to 2 cm.
        assertThat(Integer.parseInt(farther.reason().arguments().get(0))).isBetween(25, 35);
        assertThat(farther.points().get(0).findings())
                .anySatisfy(f -> assertThat(f.reason().key()).isEqualTo("sound-displaced-farther"));
        CabinetJudgement line = powered(null, Disturbance.MIC_MOVED);
        assertThat(line.verdict()).as("%s", line.reason()).isEqualTo(Verdict.PASS);
        assertThat(line.reason().key()).isEqualTo("verdict-pass-powered-farther");

        for (FaultKind kind : new FaultKind[] {FaultKind.WAY_WEAK, FaultKind.POLARITY_REVERSED}) {
            Fault fault = Fault.of(kind, "HF", kind == FaultKind.WAY_WEAK ? 8 : 0);
            CabinetJudgement found = passive(fault, Disturbance.MIC_MOVED);
            assertThat(found.verdict()).as("%s", found.reason()).isEqualTo(Verdict.FAIL);
            assertThat(found.suspects().get(0).kind().name())
                    .isEqualTo(kind == FaultKind.WAY_WEAK ? "WAY_WEAK" : "WAY_REVERSED");
        }
    }

    @ParameterizedTest
    @CsvSource({"WAY_WEAK, HF, 30", "POLARITY_REVERSED, HF, 0", "POLARITY_REVERSED, LF, 0", "WAY_WEAK, LF, 30"})
    void aFaultOfAWayIsNotTakenForAnotherPlace(FaultKind kind, String target, double severity) throws RigException {
        CabinetJudgement found = passive(Fault.of(kind, target, severity));
        assertThat(found.verdict()).isEqualTo(Verdict.FAIL);
        assertThat(found.points().get(0).findings())
                .noneSatisfy(f -> assertThat(f.reason().key()).startsWith("sound-displaced"));
    }

    @Test
    void aMicrophoneThatIsNotProvedProvesNothing() throws RigException {
        Optional<Reason> doubt = Optional.of(Reason.of("mic-failed", "08:00"));
        Fault weak = Fault.of(FaultKind.WAY_WEAK, "HF", 6);
        CabinetJudgement current = passive.judge(
                passive.capture("unit-21", passive.with(passiveUnit, weak), "45", 0),
                passiveBaseline,
                RigRepeatability.UNKNOWN,
                doubt);
        assertThat(current.verdict()).isEqualTo(Verdict.PASS);
        assertThat(current.reason().key()).isEqualTo("verdict-pass-current");
        assertThat(current.points().get(0).acoustic()).isNull();
        assertThat(current.points().get(0).impedance()).isNotNull();
        assertThat(current.points().get(0).findings())
                .anySatisfy(f -> assertThat(f.reason()).isEqualTo(doubt.get()));

        CabinetJudgement open = passive.judge(
                passive.capture(
                        "unit-21", passive.with(passiveUnit, Fault.of(FaultKind.DRIVER_OPEN, "HF", 0)), "45", 0),
                passiveBaseline,
                RigRepeatability.UNKNOWN,
                doubt);
        assertThat(open.verdict()).isEqualTo(Verdict.FAIL);

        CabinetJudgement silent = powered.judge(
                powered.capture("unit-22", poweredUnit, "45", 0), poweredBaseline, RigRepeatability.UNKNOWN, doubt);
        assertThat(silent.verdict()).isEqualTo(Verdict.SWEEP_AGAIN);
        assertThat(silent.prompt()).isEqualTo(Prompt.PERSON_DECIDES);
        assertThat(silent.reason()).isEqualTo(doubt.get());
    }

    @ParameterizedTest
    @CsvSource({
        "WAY_WEAK, HF, 3, WAY_WEAK",
        "WAY_WEAK, LF, 3, WAY_WEAK",
        "POLARITY_REVERSED, HF, 0, WAY_REVERSED",
        "POLARITY_REVERSED, LF, 0, WAY_REVERSED",
        "RUB, LF, -40, COIL_RUBS"
    })
    void hearsWhatTheCurrentCannotTell(FaultKind kind, String target, double severity, String suspect)
            throws RigException {
        Fault fault = Fault.of(kind, target, severity);
        for (CabinetJudgement judged : new CabinetJudgement[] {passive(fault), powered(fault)}) {
            assertThat(judged.verdict()).as("%s", judged.reason()).isEqualTo(Verdict.FAIL);
            assertThat(judged.suspects().get(0).kind().name()).isEqualTo(suspect);
            assertThat(judged.suspects().get(0).positionCode()).isEqualTo(target);
        }
    }

    /** Driver of double impedance, or of half in the other way: 3 dB against the other way, in a hall of 70 dB. */
    @ParameterizedTest
    @CsvSource({"LF, 2, LF", "HF, 0.5, LF"})
    void aWrongPartOfAPoweredCabinetIsFoundWithAReferenceOnly(String target, double factor, String weak)
            throws RigException {
        VirtualCabinet wrong = poweredUnit.with(Fault.of(FaultKind.WRONG_IMPEDANCE, target, factor));
        CabinetJudgement judged = powered.judge(powered.capture("unit-22", wrong, "70", 0), null);
        assertThat(judged.verdict()).as("%s", judged.reason()).isEqualTo(Verdict.FAIL);
        assertThat(judged.suspects().get(0).positionCode()).isEqualTo(weak);
    }

    @Test
    void whatCannotExcludeAWrongPartOfAPoweredCabinetIsNoPass() throws RigException {
        VirtualCabinet edge = poweredUnit.with(Fault.of(FaultKind.WAY_WEAK, "HF", 1.2));
        CabinetJudgement judged = powered.judge(powered.capture("unit-22", edge, "45", 0), null);
        assertThat(judged.verdict()).isEqualTo(Verdict.SWEEP_AGAIN);
        assertThat(judged.prompt()).isEqualTo(Prompt.PERSON_DECIDES);
        assertThat(judged.reason().key()).isEqualTo("sound-levels-unclear");
    }

    @Test
    void namesALoosePartBesideTheCoil() throws RigException {
        CabinetJudgement judged = powered(Fault.of(FaultKind.BUZZ, "box", -35));
        assertThat(judged.verdict()).isEqualTo(Verdict.FAIL);
        assertThat(judged.reason().key()).isEqualTo("verdict-touching");
        assertThat(judged.suspects()).extracting(s -> s.kind().name()).contains("LOOSE_PART", "COIL_RUBS");
    }

    @ParameterizedTest
    @CsvSource({
        "MIC_UNPLUGGED, sound-unheard",
        "MIC_WRONG_CHANNEL, sound-by-wire",
        "MIC_OVERLOADED, capture-clipped-microphone",
        "NEIGHBOUR, sound-foreign",
        "FACING_AWAY, sound-facing"
    })
    void saysWhatIsWrongWithTheSoundAndNotWithTheCabinet(Disturbance spoiled, String key) throws RigException {
        CabinetJudgement judged = passive(null, spoiled);
        assertThat(judged.verdict()).isEqualTo(Verdict.SWEEP_AGAIN);
        assertThat(judged.reason().key()).isEqualTo(key);
    }

    @ParameterizedTest
    @CsvSource({"FORKLIFT", "WIND", "REVERBERANT", "KNOCK"})
    void neverBlamesTheCabinetForTheHall(Disturbance spoiled) throws RigException {
        assertThat(passive(null, spoiled).verdict()).isNotEqualTo(Verdict.FAIL);
        assertThat(powered(null, spoiled).verdict()).isNotEqualTo(Verdict.FAIL);
    }
}
