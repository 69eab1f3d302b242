package org.docksweep.kiosk.night;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Robot;
import java.awt.event.KeyEvent;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.AuditEntry;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.contract.KioskToken;
import org.docksweep.contract.Person;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.kiosk.Main;
import org.docksweep.kiosk.people.PersonBook;
import org.docksweep.kiosk.people.SignOnDesk;
import org.docksweep.kiosk.people.SignOnOffice;
import org.docksweep.kiosk.people.SignOnParts;
import org.docksweep.kiosk.screens.Display;
import org.docksweep.kiosk.screens.ScreenEyes;
import org.docksweep.kiosk.service.ChildService;
import org.docksweep.kiosk.service.ServiceClient;
import org.docksweep.kiosk.settings.KioskSettings;
import org.docksweep.kiosk.settings.SettingsFile;
import org.docksweep.kiosk.spool.OutboxCounts;
import org.docksweep.kiosk.spool.Spool;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Signing on with the real service, and practice beside it, in a process and a window of its own. */
class PracticeIT {
    private static final String TOKEN = "0123456789012345678901234567890123456789";
    private static final String PIN = "580317";
    private static final long PATIENCE_S = 180;

    /** Ground of the band of practice, and of the answer PASS, in the dark theme. */
    private static final int BAND = 0xf2c230;

    private static final int PASS = 0x3ecb82;
    private static final int LOOK = 0x13549f;
    /** Much less than a band or a plate, much more than a sign. */
    private static final int MANY_PIXELS = 8000;
    /** More than the button of the page that is up. */
    private static final int LOOK_PIXELS = 20_000;

    @TempDir
    private Path folder;

    @Test
    void signsOnWithTheServiceAndPractisesWithoutIt() throws Exception {
        Path jar = Capability.serviceJar();
        Display.need();
        try (ChildService service = ChildService.start(jar, folder.resolve("service"), TOKEN)) {
            ServiceClient manager = new ServiceClient(service.address(), TOKEN);
            Person ines = new Person(UUID.randomUUID(), "Ines Falk", "B-0042", Person.Role.DOCK, false);
            manager.put(ApiPaths.PEOPLE + "/" + ines.id(), ines);
            manager.put(ApiPaths.PEOPLE + "/" + ines.id() + ApiPaths.PIN, new Person.Pin(PIN));
            KioskToken token = manager.post(
                    ApiPaths.KIOSK_TOKENS, new KioskToken.Order("kiosk-07", KioskToken.Role.DOCK), KioskToken.class);

            signOn(new ServiceClient(service.address(), token.token()));

            List<AuditEntry> before = manager.all(ApiPaths.AUDIT, AuditEntry.class);
            assertThat(before).anySatisfy(entry -> {
                assertThat(entry.doneBy()).isEqualTo("Ines Falk");
                assertThat(entry.kiosk()).isEqualTo("kiosk-07");
            });
            practise(service.address(), token.token());
            assertThat(manager.all(ApiPaths.AUDIT, AuditEntry.class))
                    .as("every write at the service leaves a line; there is no new one")
                    .isEqualTo(before);
            KioskSnapshot house = manager.get(ApiPaths.KIOSK_SNAPSHOT, KioskSnapshot.class);
            assertThat(house.cabinets()).isEmpty();
            assertThat(house.checkedIn()).isEmpty();
        }
    }

    private void signOn(ServiceClient kiosk) throws Exception {
        PersonBook book = PersonBook.open(folder.resolve("people.json"), Duration.ofDays(7), Clock.systemUTC());
        SignOnParts parts = new SignOnParts(
                SignOnOffice.of(kiosk),
                book,
                Clock.systemUTC(),
                System::nanoTime,
                () -> false,
                text -> {},
                "kiosk-07",
                new SignOnParts.Settings(Duration.ZERO, "B-"));
        try (SignOnDesk desk = new SignOnDesk(parts)) {
            desk.typed("B-0042");
            desk.typed("111122");
            desk.typed(PIN);
            long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_S);
            while (desk.state().person().isEmpty() && System.nanoTime() < end) {
                Thread.onSpinWait();
            }
            assertThat(desk.operator()).isEqualTo("Ines Falk");
        }
    }

    /** What the real kiosk has: settings with the real service, and a record that waits. */
    private Path realKiosk(URI service, String token) throws Exception {
        Path kiosk = folder.resolve("kiosk");
        SettingsFile.in(kiosk)
                .write(new KioskSettings(
                        service, token, 7, "audio", Map.of(), null, null, "DARK", 1, "en", 10, "B-", 7));
        try (Spool spool = Spool.open(kiosk.resolve("spool"), Clock.systemUTC())) {
            spool.register(
                    new CabinetBody(new AssetTag("MCH-000999"), "TIDE-12", "", CabinetStatus.OUT, false, List.of()));
        }
        return kiosk;
    }

    private static OutboxCounts counts(Path kiosk) {
        try (Spool spool = Spool.open(kiosk.resolve("spool"), Clock.systemUTC())) {
            assertThat(spool.checkIns()).isEmpty();
            assertThat(spool.registered()).hasSize(1);
            return spool.outbox().counts();
        }
    }

    private void practise(URI service, String token) throws Exception {
        Path kiosk = realKiosk(service, token);
        OutboxCounts before = counts(kiosk);
        assertThat(before.waiting()).isEqualTo(1);
        byte[] settings = Files.readAllBytes(SettingsFile.in(kiosk).path());
        Path temporary = Files.createDirectories(folder.resolve("temporary"));
        Path said = folder.resolve("said.txt");
        // Rig and house of practice must fit into what is shipped.
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(ShippedJvm.options());
        command.addAll(List.of(
                "-Djava.awt.headless=false",
                "-Djava.io.tmpdir=" + temporary,
                "-classpath",
                System.getProperty("java.class.path"),
                Main.class.getName(),
                "kiosk",
                "--folder",
                kiosk.toString(),
                "--practice"));
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start();
        try {
            Robot hands = new Robot();
            hands.setAutoDelay(20);
            ScreenEyes eyes = new ScreenEyes(hands, process, said);
            eyes.await("the band of practice", BAND, MANY_PIXELS);
            assertThat(folders(temporary)).hasSize(1);
            press(hands, KeyEvent.VK_CONTROL, KeyEvent.VK_F8);
            eyes.await("the visual list", LOOK, LOOK_PIXELS);
            press(hands, KeyEvent.VK_SHIFT, KeyEvent.VK_F1);
            eyes.await("PASS", PASS, MANY_PIXELS);
            press(hands, KeyEvent.VK_ALT, KeyEvent.VK_F4);
            assertThat(process.waitFor(PATIENCE_S, TimeUnit.SECONDS)).isTrue();
            assertThat(process.exitValue())
                    .as(Files.readString(said, StandardCharsets.UTF_8))
                    .isZero();
        } finally {
            process.destroyForcibly();
        }
        assertThat(folders(temporary)).as("nothing is left of practice").isEmpty();
        assertThat(counts(kiosk)).isEqualTo(before);
        assertThat(Files.readAllBytes(SettingsFile.in(kiosk).path())).isEqualTo(settings);
        System.out.printf(
                "practice: audit log unchanged, real spool %d waiting before and %d after%n",
                before.waiting(), counts(kiosk).waiting());
    }

    private static List<Path> folders(Path temporary) throws Exception {
        try (var all = Files.list(temporary)) {
            return all.filter(f -> f.getFileName().toString().startsWith("docksweep-practice-"))
                    .toList();
        }
    }

    private static void press(Robot hands, int modifier, int key) {
        // Shift changes no command of the window: the key alone counts.
        hands.keyPress(modifier);
        hands.keyPress(key);
        hands.keyRelease(key);
        hands.keyRelease(modifier);
    }
}
