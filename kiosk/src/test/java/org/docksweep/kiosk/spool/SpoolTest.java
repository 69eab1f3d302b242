package org.docksweep.kiosk.spool;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.CheckInBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Route;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SpoolTest {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-05-02T01:00:00Z"), ZoneOffset.UTC);

    @TempDir
    Path folder;

    @Test
    void neverGivesTheSameJobCodeTwiceAcrossRestarts() {
        Set<JobCode> given = new HashSet<>();
        for (int night = 0; night < 3; night++) {
            try (Spool spool = Spool.open(folder, CLOCK)) {
                for (int i = 0; i < 4; i++) {
                    assertThat(given.add(spool.nextJobCode(7))).isTrue();
                }
            }
        }
        assertThat(given).contains(JobCode.of(7, 1), JobCode.of(7, 12));
    }

    @Test
    void goesOnAfterAKnownJobCode() {
        try (Spool spool = Spool.open(folder, CLOCK)) {
            spool.jobCodesGoOnAfter(41);
            assertThat(spool.nextJobCode(1)).isEqualTo(JobCode.of(1, 42));
            spool.jobCodesGoOnAfter(3);
            assertThat(spool.nextJobCode(1)).isEqualTo(JobCode.of(1, 43));
        }
    }

    @Test
    void keepsOrderAndContentAcrossRestarts() {
        CheckInBody first = checkIn("TST-000001");
        CheckInBody second = checkIn("TST-000002");
        try (Spool spool = Spool.open(folder, CLOCK)) {
            spool.register(cabinet("TST-000002"));
            spool.record(first);
            spool.record(second);
        }
        try (Spool spool = Spool.open(folder, CLOCK)) {
            assertThat(spool.checkIns()).containsExactlyInAnyOrder(first, second);
            assertThat(spool.outbox().next().orElseThrow().path()).isEqualTo(ApiPaths.CABINETS + "/TST-000002");
            spool.outbox().sent(spool.outbox().next().orElseThrow());
            OutboxItem next = spool.outbox().next().orElseThrow();
            assertThat(next.path()).isEqualTo(ApiPaths.CHECK_INS + "/" + first.id());
            assertThat(Wire.json().readValue(next.body(), CheckInBody.class)).isEqualTo(first);
        }
    }

    @Test
    void storesNothingOfACheckInThatIsThereAlready() {
        CheckInBody body = checkIn("TST-000001");
        try (Spool spool = Spool.open(folder, CLOCK)) {
            spool.record(body);
            assertThatThrownBy(() -> spool.record(body)).isInstanceOf(SpoolException.class);
            assertThat(spool.outbox().counts().waiting()).isEqualTo(1);
        }
    }

    @Test
    void setsDamagedFileAsideAndStartsAfresh() throws IOException {
        byte[] rubbish = "this is no database".repeat(1000).getBytes(StandardCharsets.US_ASCII);
        Files.createDirectories(folder);
        Files.write(folder.resolve("spool.mv.db"), rubbish);
        try (Spool spool = Spool.open(folder, CLOCK)) {
            Path aside = spool.setAside().orElseThrow();
            assertThat(aside).hasBinaryContent(rubbish);
            spool.record(checkIn("TST-000001"));
        }
        try (Spool spool = Spool.open(folder, CLOCK)) {
            assertThat(spool.setAside()).isEmpty();
            assertThat(spool.checkIns()).hasSize(1);
        }
    }

    @Test
    void takesBackWhatFollowsATornLineOfTheSecondCopy() throws IOException {
        CheckInBody first = checkIn("TST-000001");
        CheckInBody second = checkIn("TST-000002");
        try (Spool spool = Spool.open(folder, CLOCK)) {
            spool.record(first);
        }
        Files.writeString(
                folder.resolve("unsent.journal"), "0badc0de\t+\tCHECK_IN\t/api/che", StandardOpenOption.APPEND);
        try (Spool spool = Spool.open(folder, CLOCK)) {
            spool.record(second);
        }
        Files.write(folder.resolve("spool.mv.db"), new byte[20_000]);
        try (Spool spool = Spool.open(folder, CLOCK)) {
            assertThat(spool.restored()).isEqualTo(2);
            assertThat(spool.checkIns()).containsExactlyInAnyOrder(first, second);
            assertThat(spool.outbox().counts()).isEqualTo(new OutboxCounts(2, 0, 0));
        }
    }

    @Test
    void givesBackNothingThatWasSent() throws IOException {
        try (Spool spool = Spool.open(folder, CLOCK)) {
            spool.record(checkIn("TST-000001"));
            spool.outbox().sent(spool.outbox().next().orElseThrow());
            spool.record(checkIn("TST-000002"));
            assertThat(spool.nextJobCode(3)).isEqualTo(JobCode.of(3, 1));
        }
        Files.write(folder.resolve("spool.mv.db"), new byte[20_000]);
        try (Spool spool = Spool.open(folder, CLOCK)) {
            assertThat(spool.outbox().counts()).isEqualTo(new OutboxCounts(1, 0, 0));
            assertThat(spool.nextJobCode(3)).isEqualTo(JobCode.of(3, 2));
        }
    }

    @Test
    void refusesFolderThatAnotherKioskUses() throws IOException, InterruptedException {
        try (Spool spool = Spool.open(folder, CLOCK)) {
            String java =
                    Path.of(System.getProperty("java.home"), "bin", "java").toString();
            Process other = new ProcessBuilder(
                            java,
                            "-cp",
                            System.getProperty("java.class.path"),
                            SecondKiosk.class.getName(),
                            folder.toString())
                    .redirectErrorStream(true)
                    .start();
            String said = new String(other.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            other.waitFor();
            assertThat(said).contains("in use by another kiosk");
            assertThat(spool.outbox().counts().waiting()).isZero();
        }
    }

    /** Opens the spool from another process. */
    static final class SecondKiosk {
        private SecondKiosk() {}

        public static void main(String[] arguments) {
            try (Spool spool = Spool.open(Path.of(arguments[0]), CLOCK)) {
                System.out.println("opened " + spool.outbox().counts());
            } catch (SpoolException e) {
                System.out.println(e.getMessage());
            }
        }
    }

    @Test
    void parksVisiblyAndTriesAgainOnRequest() {
        try (Spool spool = Spool.open(folder, CLOCK)) {
            spool.record(checkIn("TST-000001"));
            spool.outbox().park(spool.outbox().next().orElseThrow().sequence(), "unknown cabinet");
            assertThat(spool.outbox().next()).isEmpty();
            assertThat(spool.outbox().counts()).isEqualTo(new OutboxCounts(0, 1, 0));
            assertThat(spool.outbox().parked()).extracting(ParkedItem::words).containsExactly("unknown cabinet");
            spool.outbox().tryParkedAgain();
            assertThat(spool.outbox().next()).isPresent();
        }
    }

    @Test
    void replacesRefusedRegistrationByANewOne() {
        try (Spool spool = Spool.open(folder, CLOCK)) {
            spool.register(cabinet("TST-000001"));
            spool.outbox().park(spool.outbox().next().orElseThrow().sequence(), "unknown model");
            spool.register(cabinet("TST-000001"));
            assertThat(spool.outbox().counts()).isEqualTo(new OutboxCounts(1, 0, 0));
        }
    }

    @Test
    void forgetsSentRecordsAfterAMonthButNeverUnsentOnes() {
        CheckInBody sent = checkIn("TST-000001");
        CheckInBody unsent = checkIn("TST-000002");
        try (Spool spool = Spool.open(folder, CLOCK)) {
            spool.record(sent);
            spool.record(unsent);
            spool.outbox().sent(spool.outbox().next().orElseThrow());
        }
        Clock later = Clock.offset(CLOCK, Spool.KEEP_SENT.plus(Duration.ofDays(1)));
        try (Spool spool = Spool.open(folder, later)) {
            assertThat(spool.checkIns()).containsExactly(unsent);
            assertThat(spool.outbox().counts()).isEqualTo(new OutboxCounts(1, 0, 0));
        }
    }

    static CabinetBody cabinet(String tag) {
        return new CabinetBody(new AssetTag(tag), "ONE", "C-01", CabinetStatus.OUT, false, List.of());
    }

    static CheckInBody checkIn(String tag) {
        return new CheckInBody(
                UUID.randomUUID(),
                new AssetTag(tag),
                "ONE",
                null,
                "kiosk-1",
                "Ines",
                CLOCK.instant(),
                CLOCK.instant(),
                Set.of(),
                null,
                Route.MANUAL_HOLD,
                false,
                Reason.of("dock-wet", tag),
                null,
                List.of(),
                List.of(),
                null,
                null,
                1,
                List.of());
    }
}
