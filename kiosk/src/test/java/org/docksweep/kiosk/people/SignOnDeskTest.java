package org.docksweep.kiosk.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.docksweep.kiosk.people.SignOnBench.INES;
import static org.docksweep.kiosk.people.SignOnBench.INES_PIN;
import static org.docksweep.kiosk.people.SignOnBench.TOMA;
import static org.docksweep.kiosk.people.SignOnBench.TOMA_PIN;
import static org.docksweep.kiosk.people.SignOnBench.message;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import org.docksweep.kiosk.people.SignOnState.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class SignOnDeskTest {
    @TempDir
    private Path folder;

    private SignOnBench bench;

    @BeforeEach
    void opens() throws Exception {
        bench = new SignOnBench(folder);
    }

    @AfterEach
    void closes() {
        bench.close();
    }

    private void signOnBoth() throws Exception {
        bench.enter(TOMA, TOMA_PIN, INES);
        SignOnState state = bench.enter(INES_PIN);
        assertThat(state.person()).contains("Ines Falk");
    }

    @Test
    void isLockedUntilSomebodySignsOn() throws Exception {
        assertThat(bench.desk.state().stage()).isEqualTo(Stage.WHO);
        assertThat(bench.desk.operator()).isEqualTo("kiosk-01");

        SignOnState asked = bench.enter(INES);

        assertThat(asked.stage()).isEqualTo(Stage.PIN);
        assertThat(asked.locked()).isTrue();
        SignOnState on = bench.enter(INES_PIN);
        assertThat(on.stage()).isEqualTo(Stage.WORK);
        assertThat(bench.desk.operator()).isEqualTo("Ines Falk");
    }

    @Test
    void letsTheNextBadgeTakeOverWithoutAPinOnceItWasGiven() throws Exception {
        signOnBoth();
        bench.askedAtService.clear();

        SignOnState state = bench.enter(TOMA);

        assertThat(state.stage()).isEqualTo(Stage.WORK);
        assertThat(state.person()).contains("Toma Reyl");
        assertThat(bench.askedAtService).isEmpty();
    }

    @Test
    void leavesWhoeverWorksInPlaceUntilThePinOfTheNextIsRight() throws Exception {
        bench.enter(INES, INES_PIN, TOMA);

        SignOnState wrong = bench.enter("111222");

        assertThat(wrong.stage()).isEqualTo(Stage.PIN);
        assertThat(message(wrong)).isEqualTo("people-wrong");
        assertThat(bench.desk.operator()).isEqualTo("Ines Falk");
        bench.desk.back();
        bench.desk.back();
        assertThat(bench.settled().stage()).isEqualTo(Stage.WORK);
    }

    @Test
    void asksForThePinAgainAfterTheShiftAndAfterSigningOff() throws Exception {
        bench.enter(INES, INES_PIN);
        bench.desk.signOff();

        assertThat(bench.enter(INES).stage()).isEqualTo(Stage.PIN);
        bench.enter(INES_PIN);
        bench.pass(Duration.ofHours(13));
        bench.desk.lock();

        assertThat(bench.enter(INES).stage()).isEqualTo(Stage.PIN);
    }

    @Test
    void signsOnByNameWithThePinAlways() throws Exception {
        signOnBoth();
        bench.desk.lock();

        SignOnState asked = bench.enter("toma reyl");

        assertThat(asked.stage()).isEqualTo(Stage.PIN);
        assertThat(asked.asked()).contains("Toma Reyl");
        assertThat(bench.enter(TOMA_PIN).person()).contains("Toma Reyl");
        bench.desk.lock();
        bench.desk.choose(0);
        assertThat(bench.settled().asked()).contains("Ines Falk");
    }

    @Test
    void worksWithoutTheServiceForWhomItVouchedBefore() throws Exception {
        bench.enter(INES, INES_PIN);
        bench.desk.signOff();
        bench.settled();
        bench.away = true;
        bench.restart();

        bench.enter(INES);
        assertThat(message(bench.enter("000111"))).isEqualTo("people-wrong");
        assertThat(bench.enter(INES_PIN).person()).contains("Ines Falk");

        bench.enter(TOMA);
        assertThat(message(bench.enter(TOMA_PIN))).isEqualTo("people-not-known-here");
    }

    @Test
    void asksTheServiceAgainWhenAPinIsTooOld() throws Exception {
        bench.enter(INES, INES_PIN);
        bench.away = true;
        bench.pass(Duration.ofDays(7));
        bench.desk.lock();

        bench.enter(INES);

        assertThat(message(bench.enter(INES_PIN))).isEqualTo("people-not-known-here");
    }

    @Test
    void bringsNothingOldBackToLifeWhenTheClockIsSetBack() throws Exception {
        bench.enter(INES, INES_PIN);
        bench.away = true;
        bench.pass(Duration.ofDays(-2));
        bench.desk.lock();

        assertThat(bench.enter(INES).stage()).isEqualTo(Stage.PIN);
        assertThat(message(bench.enter(INES_PIN))).isEqualTo("people-not-known-here");
    }

    @Test
    void slowsDownWrongTriesWithoutTheServiceAlsoAfterARestart() throws Exception {
        bench.enter(INES, INES_PIN);
        bench.desk.signOff();
        bench.away = true;
        bench.enter(INES, "000001", "000002", "000003");
        assertThat(message(bench.enter("000004"))).isEqualTo("people-wrong");

        assertThat(message(bench.enter(INES_PIN))).isEqualTo("people-wait");
        bench.restart();
        bench.enter(INES);
        assertThat(message(bench.enter(INES_PIN))).isEqualTo("people-wait");
        bench.pass(Duration.ofSeconds(6));
        assertThat(bench.enter(INES_PIN).person()).contains("Ines Falk");
    }

    @Test
    void givesUpAfterTenWrongTriesUntilTheServiceHelps() throws Exception {
        bench.enter(INES, INES_PIN);
        bench.desk.signOff();
        bench.away = true;
        for (int i = 0; i < KnownPerson.MOST_TRIES; i++) {
            // Anew each time: in so long a while the desk gives the question for the PIN up.
            bench.enter(INES, "00000" + i);
            bench.pass(Duration.ofMinutes(16));
        }

        bench.enter(INES);
        assertThat(message(bench.enter(INES_PIN))).isEqualTo("people-not-known-here");
        bench.away = false;
        assertThat(bench.enter(INES_PIN).person()).contains("Ines Falk");
    }

    @Test
    void forgetsSomebodyWhomTheServiceNoLongerKnows() throws Exception {
        bench.enter(INES, INES_PIN);
        bench.desk.signOff();
        bench.pins.remove(INES);
        bench.enter(INES);
        assertThat(message(bench.enter(INES_PIN))).isEqualTo("people-wrong");
        bench.away = true;

        assertThat(message(bench.enter(INES_PIN))).isEqualTo("people-not-known-here");
    }

    @Test
    void fallsBackOnWhatItKnowsWhenTheServiceIsBroken() throws Exception {
        bench.enter(INES, INES_PIN);
        bench.desk.signOff();
        bench.refuses = Problems.of(500, "");
        bench.enter(INES);

        assertThat(bench.enter(INES_PIN).person()).contains("Ines Falk");
    }

    @Test
    void saysWhenTheKiosksOwnTokenIsRefused() throws Exception {
        bench.refuses = Problems.of(401, "");
        bench.enter(INES);

        assertThat(message(bench.enter(INES_PIN))).isEqualTo("people-kiosk-token");
    }

    @Test
    void keepsCabinetsThatAreScannedWhileLockedAndHandsThemOver() throws Exception {
        bench.enter("MCH-000117", "MCH-000118", "MCH-000117");
        SignOnState state = bench.enter(INES, "MCH-000119");

        assertThat(state.stage()).as("a tag is no PIN").isEqualTo(Stage.PIN);
        assertThat(message(state)).isEqualTo("people-held");
        assertThat(state.held()).containsExactly("MCH-000117", "MCH-000118", "MCH-000119");
        assertThat(bench.handedOver()).isEmpty();
        SignOnState on = bench.enter(INES_PIN);
        assertThat(on.held()).isEmpty();
        assertThat(bench.handedOver()).containsExactly("MCH-000117", "MCH-000118", "MCH-000119");
    }

    @Test
    void takesNeitherBadgeNorNonsenseForAPin() throws Exception {
        bench.enter(TOMA, TOMA_PIN, INES);
        bench.askedAtService.clear();

        assertThat(message(bench.enter("12345"))).isEqualTo("people-not-a-pin");
        assertThat(message(bench.enter("what?"))).isEqualTo("people-not-a-pin");
        assertThat(bench.askedAtService).isEmpty();
        assertThat(bench.enter(TOMA).person()).contains("Toma Reyl");
    }

    @Test
    void tellsBadgesFromCabinets() throws Exception {
        assertThat(bench.desk.isBadge("B-0001")).isTrue();
        assertThat(bench.desk.isBadge("b-0001")).isTrue();
        assertThat(bench.desk.isBadge("MCH-000117")).isFalse();
        assertThat(bench.desk.isBadge("]C1800406141411")).isFalse();
        assertThat(bench.desk.isBadge("B-1")).as("too short for a badge").isFalse();
    }

    @Test
    void locksWhenNobodyTouchesItButNeverDuringWork() throws Exception {
        bench.enter(INES, INES_PIN);
        bench.working = true;
        bench.ticksNs += Duration.ofHours(1).toNanos();
        bench.desk.look();
        assertThat(bench.settled().stage()).isEqualTo(Stage.WORK);

        bench.working = false;
        bench.ticksNs += Duration.ofMinutes(9).toNanos();
        bench.desk.look();
        assertThat(bench.settled().stage()).isEqualTo(Stage.WORK);
        bench.desk.touched();
        bench.ticksNs += Duration.ofMinutes(9).toNanos();
        bench.desk.look();
        assertThat(bench.settled().stage()).isEqualTo(Stage.WORK);

        bench.ticksNs += Duration.ofMinutes(1).toNanos();
        bench.desk.look();
        SignOnState locked = bench.settled();
        assertThat(locked.locked()).isTrue();
        assertThat(message(locked)).isEqualTo("people-left-alone");
        assertThat(bench.desk.operator()).isEqualTo("Ines Falk");
        assertThat(bench.enter(INES).stage()).isEqualTo(Stage.WORK);
    }

    @Test
    void neverLocksByItselfWhenToldSo() throws Exception {
        bench.close();
        bench = new SignOnBench(folder, new SignOnParts.Settings(Duration.ZERO, ""));
        bench.enter(INES, INES_PIN);
        bench.ticksNs += Duration.ofDays(1).toNanos();

        bench.desk.look();

        assertThat(bench.settled().stage()).isEqualTo(Stage.WORK);
    }

    @Test
    void goesOnAfterAPowerCutWithTheBadgeAlone() throws Exception {
        bench.enter(INES, INES_PIN);
        bench.away = true;
        bench.restart();

        assertThat(bench.enter(INES).person()).contains("Ines Falk");
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void storesNoPinAndShowsItsFileToNobodyElse() throws Exception {
        signOnBoth();

        String stored = Files.readString(bench.file(), StandardCharsets.UTF_8);
        assertThat(stored).contains("Ines Falk", "pbkdf2").doesNotContain(INES_PIN, TOMA_PIN);
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(bench.file())))
                .isEqualTo("rw-------");
    }

    @Test
    void putsADamagedFileAsideAndAsksTheServiceOnce() throws Exception {
        bench.enter(INES, INES_PIN);
        bench.desk.close();
        Files.writeString(bench.file(), "{\"people\": [{\"badge\"");
        bench.start();

        assertThat(bench.file().resolveSibling("people.json.damaged")).exists();
        assertThat(bench.enter(INES, INES_PIN).person()).contains("Ines Falk");
    }

    @Test
    void saysWhenTheDiskRefusesAndSignsNobodyOn() throws Exception {
        Files.createDirectories(bench.file().resolve("in-the-way"));

        SignOnState state = bench.enter(INES, INES_PIN);

        assertThat(message(state)).isEqualTo("people-cannot-keep");
        assertThat(state.person()).isEmpty();
        assertThat(state.busy()).isFalse();
    }
}
