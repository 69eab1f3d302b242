package org.docksweep.kiosk.dock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.docksweep.kiosk.dock.SmallHouse.FIRST;
import static org.docksweep.kiosk.dock.SmallHouse.SECOND;

import java.io.IOException;
import java.io.InputStream;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;
import org.docksweep.contract.CheckInBody;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Route;
import org.docksweep.judge.Prompt;
import org.docksweep.kiosk.dock.DockState.NoticeAction;
import org.docksweep.kiosk.dock.DockState.Phase;
import org.docksweep.kiosk.dock.DockState.TagPrint;
import org.docksweep.kiosk.dock.FaultDock.Setting;
import org.docksweep.kiosk.dock.FaultService.Mood;
import org.docksweep.kiosk.printing.PrintQueue;
import org.docksweep.kiosk.rig.SteppingClock;
import org.docksweep.kiosk.rig.audio.VanishingSound;
import org.docksweep.kiosk.spool.OutboxCounts;
import org.docksweep.kiosk.spool.Trouble;
import org.docksweep.sweep.Rig;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What goes wrong in a night, each with the sentence the person sees and the spool before, during and after. A full disk and the
 * real printer are in {@code FaultsIT}, kills in {@code KioskKillIT}, a second kiosk on one spool in {@code SpoolTest}.
 */
class FaultsTest {
    private static final FaultTable TABLE = new FaultTable();
    private static final char[] PASSWORD = "changeit".toCharArray();
    private static final Instant NIGHT = Instant.parse("2026-05-02T01:30:00Z");

    @TempDir
    Path folder;

    private final SteppingClock clock = new SteppingClock(NIGHT);
    private FaultService service;
    private FaultDock kiosk;
    private FaultDock other;

    @BeforeEach
    void start() throws IOException {
        service = new FaultService(clock);
    }

    @AfterEach
    void stop() {
        if (kiosk != null) {
            kiosk.close();
        }
        if (other != null) {
            other.close();
        }
        service.close();
    }

    @AfterAll
    static void print() {
        TABLE.print("FaultsTest");
    }

    private FaultDock open(String name, int number, Rig rig, Optional<PrintQueue> queue) {
        return new FaultDock(new Setting(folder.resolve(name), number, rig, queue, clock), service);
    }

    private FaultDock open() {
        kiosk = open("kiosk", 1, new ScriptedRig(), Optional.empty());
        return kiosk;
    }

    private void checkIn(FaultDock at, org.docksweep.fleet.AssetTag tag) throws InterruptedException {
        at.gate.pass();
        at.checkIn(tag);
    }

    @ParameterizedTest
    @CsvSource({
        "SILENT, SLOW, service too slow",
        "FAULTY, FAULTY, service has a fault",
        "BUSY, BUSY, service is busy",
        "KNOWS_NOBODY, NOT_SIGNED_ON, service refuses this kiosk"
    })
    void goesOnWhileTheServiceIsInABadMood(Mood mood, Trouble trouble, String words) throws Exception {
        open();
        OutboxCounts before = kiosk.counts();
        service.mood(mood);
        checkIn(kiosk, FIRST);
        checkIn(kiosk, SECOND);
        String seen = kiosk.strip(trouble);
        OutboxCounts during = kiosk.counts();
        assertThat(seen).isEqualTo(words);
        assertThat(before.notAtService()).isZero();
        // Both cabinets with their recordings.
        assertThat(during.waiting()).isEqualTo(4);
        service.mood(Mood.WELL);
        kiosk.awaitSent();
        TABLE.add("service " + mood, seen, before, during, kiosk.counts());
        assertThat(kiosk.counts().sent()).isEqualTo(4);
        assertThat(service.checkIns()).extracting(CheckInBody::tag).containsExactly(FIRST, SECOND);
    }

    @Test
    void goesOnWhileTheServiceIsDown() throws Exception {
        open();
        OutboxCounts before = kiosk.counts();
        service.goDown();
        checkIn(kiosk, FIRST);
        checkIn(kiosk, SECOND);
        String seen = kiosk.strip(Trouble.UNREACHABLE);
        OutboxCounts during = kiosk.counts();
        assertThat(seen).isEqualTo("service not reached");
        assertThat(during.waiting()).isEqualTo(4);
        service.comeBack();
        kiosk.awaitSent();
        TABLE.add("service down", seen, before, during, kiosk.counts());
        assertThat(service.checkIns()).extracting(CheckInBody::tag).containsExactly(FIRST, SECOND);
        assertThat(service.repeated()).isZero();
    }

    @Test
    void tellsAWrongCertificateFromADeadNetwork() throws Exception {
        KeyStore certificate = selfSigned();
        service.close();
        service = new FaultService(clock, serverSide(certificate));
        open();
        OutboxCounts before = kiosk.counts();
        checkIn(kiosk, FIRST);
        String seen = kiosk.strip(Trouble.NOT_TRUSTED);
        OutboxCounts during = kiosk.counts();
        assertThat(seen).isEqualTo("service not trusted");
        assertThat(service.checkIns()).isEmpty();
        kiosk.close();
        SSLContext usual = SSLContext.getDefault();
        try {
            // The manager has put the certificate among those this machine trusts, and started the kiosk again.
            SSLContext.setDefault(trusting(certificate));
            open().awaitSent();
        } finally {
            SSLContext.setDefault(usual);
        }
        TABLE.add("certificate wrong", seen, before, during, kiosk.counts());
        assertThat(service.checkIns()).extracting(CheckInBody::tag).containsExactly(FIRST);
    }

    @Test
    void keepsARefusedRecordUntilAPersonHasDealtWithIt() throws Exception {
        open();
        OutboxCounts before = kiosk.counts();
        service.mood(Mood.REFUSES);
        checkIn(kiosk, FIRST);
        String seen = kiosk.told("dock-record-parked");
        assertThat(seen).contains("was retired meanwhile").contains("It is kept here");
        kiosk.dock.notice(NoticeAction.DISMISS);
        // The recording is refused as well, and told as well.
        kiosk.notice("dock-record-parked");
        kiosk.dock.notice(NoticeAction.DISMISS);
        kiosk.await("two refused on the strip", s -> s.strip().refused() == 2);
        OutboxCounts during = kiosk.counts();
        assertThat(during).isEqualTo(new OutboxCounts(0, 2, 0));
        kiosk.dock.closeList();
        kiosk.notice("dock-list-closed");
        kiosk.dock.notice(NoticeAction.DISMISS);
        kiosk.told("dock-record-parked");
        service.mood(Mood.WELL);
        kiosk.dock.notice(NoticeAction.SEND_AGAIN);
        kiosk.awaitSent();
        TABLE.add("record refused", seen, before, during, kiosk.counts());
        assertThat(service.checkIns()).extracting(CheckInBody::tag).containsExactly(FIRST);
    }

    @Test
    void losesNoCabinetToASoundDeviceThatVanishesInASweep() throws Exception {
        VanishingSound rig = new VanishingSound();
        kiosk = open("kiosk", 1, rig, Optional.empty());
        OutboxCounts before = kiosk.counts();
        rig.loseNext();
        kiosk.look(FIRST);
        kiosk.dock.lookedOver(Set.of());
        DockState asked = kiosk.await(
                "the prompt to sweep again",
                s -> s.answer().filter(a -> a.prompt() == Prompt.SWEEP_AGAIN).isPresent());
        String seen = words(asked);
        assertThat(seen).contains("audio interface stopped sending").contains("sweep again");
        OutboxCounts during = kiosk.counts();
        assertThat(during).isEqualTo(before);
        kiosk.gate.pass();
        kiosk.dock.sweepAgain();
        kiosk.answer(FIRST);
        kiosk.awaitSent();
        TABLE.add("sound device vanished", seen, before, during, kiosk.counts());
        assertThat(service.checkIns()).extracting(CheckInBody::tag).containsExactly(FIRST);
    }

    private static String words(DockState state) {
        return org.docksweep.fleet.Reasons.text(state.answer().orElseThrow().reason(), java.util.Locale.ENGLISH);
    }

    @Test
    void recordsTheCabinetWhoseTagFindsNoPrinter() throws Exception {
        kiosk = open("kiosk", 1, new ScriptedRig(), Optional.of(new PrintQueue("docksweep-no-such-queue")));
        OutboxCounts before = kiosk.counts();
        kiosk.gate.fail();
        kiosk.checkIn(FIRST);
        String seen = kiosk.told("dock-tag-not-printed");
        assertThat(seen).contains(FIRST.value()).contains("docksweep-no-such-queue");
        DockState state = kiosk.await(
                "the failed tag",
                s -> s.answer().filter(a -> a.tagPrint() == TagPrint.FAILED).isPresent());
        assertThat(state.answer().orElseThrow().route()).contains(Route.BENCH);
        OutboxCounts during = kiosk.counts();
        try (var papers = Files.list(folder.resolve("kiosk").resolve("papers"))) {
            assertThat(papers.map(p -> p.getFileName().toString()))
                    .containsExactly("tag-" + JobCode.of(1, 1) + "-" + FIRST + ".pdf");
        }
        checkIn(kiosk, SECOND);
        kiosk.awaitSent();
        TABLE.add("printer gone", seen, before, during, kiosk.counts());
        assertThat(service.checkIns()).hasSize(2);
    }

    @Test
    void keepsOrderAndSenseWhileTheClockJumps() throws Exception {
        open();
        OutboxCounts before = kiosk.counts();
        service.mood(Mood.BUSY);
        kiosk.gate.pass();
        kiosk.look(FIRST);
        clock.pass(Duration.ofHours(-3));
        kiosk.dock.lookedOver(Set.of());
        kiosk.answer(FIRST);
        clock.pass(Duration.ofDays(400));
        checkIn(kiosk, SECOND);
        OutboxCounts during = kiosk.counts();
        service.mood(Mood.WELL);
        clock.pass(Duration.ofDays(-400));
        // The service's clock stays; only the kiosk's is off.
        SteppingClock right = new SteppingClock(NIGHT);
        service.close();
        service = new FaultService(right);
        kiosk.close();
        kiosk = open("kiosk", 1, new ScriptedRig(), Optional.empty());
        kiosk.refresh();
        String seen = kiosk.told("dock-fault-clock");
        assertThat(seen).contains("180 minutes");
        kiosk.awaitSent();
        TABLE.add("clock jumped back 3 h and on 400 days", seen, before, during, kiosk.counts());
        assertThat(service.checkIns()).extracting(CheckInBody::tag).containsExactly(FIRST, SECOND);
        assertThat(service.checkIns()).allMatch(c -> !c.finishedAt().isBefore(c.startedAt()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"overwritten", "cut off", "holed"})
    void takesWhatWasNotSentFromTheSecondCopyOfADamagedSpool(String damage) throws Exception {
        service.mood(Mood.FAULTY);
        open();
        kiosk.spool.keepSnapshot(SmallHouse.snapshot(), "tag");
        kiosk.gate.fail();
        kiosk.checkIn(FIRST);
        checkIn(kiosk, SECOND);
        OutboxCounts before = kiosk.counts();
        assertThat(before.waiting()).isEqualTo(4);
        kiosk.close();
        damage(folder.resolve("kiosk").resolve("spool").resolve("spool.mv.db"), damage);

        open();

        String seen = kiosk.told("dock-spool-set-aside");
        Path aside = kiosk.spool.setAside().orElseThrow();
        assertThat(aside).exists();
        assertThat(seen).contains(aside.toString()).contains("second copy: 4.");
        OutboxCounts during = kiosk.counts();
        assertThat(during.waiting()).isEqualTo(4);
        assertThat(kiosk.spool.snapshot()).as("a fleet to work with").isPresent();
        assertThat(kiosk.spool.nextJobCode(1)).as("no tag's code twice").isEqualTo(JobCode.of(1, 2));
        service.mood(Mood.WELL);
        kiosk.awaitSent();
        TABLE.add("spool file " + damage, seen.replace(folder.toString(), ""), before, during, kiosk.counts());
        assertThat(service.checkIns()).extracting(CheckInBody::tag).containsExactly(FIRST, SECOND);
        kiosk.dock.notice(NoticeAction.DISMISS);
        kiosk.dock.scan(FIRST.value());
        kiosk.notice("dock-already-checked-in");
    }

    private static void damage(Path file, String how) throws IOException {
        long length = Files.size(file);
        try (RandomAccessFile access = new RandomAccessFile(file.toFile(), "rw")) {
            switch (how) {
                case "overwritten" -> {
                    byte[] rubbish = new byte[(int) length];
                    new java.util.Random(7).nextBytes(rubbish);
                    access.write(rubbish);
                }
                case "cut off" -> access.setLength(5000);
                default -> {
                    // Both headers and the footer of the last chunk stay: such a file opens as an empty database,
                    // without a word.
                    access.seek(8192);
                    access.write(new byte[(int) Math.max(4096, length - 8192 - 128)]);
                }
            }
        }
    }

    @Test
    void doublesNothingWithTwoKiosksOnOneList() throws Exception {
        open();
        other = open("other", 2, new ScriptedRig(), Optional.empty());
        OutboxCounts before = kiosk.counts();
        checkIn(kiosk, FIRST);
        kiosk.awaitSent();
        other.refresh();
        other.dock.scan(FIRST.value());
        String seen = other.told("dock-already-checked-in");
        OutboxCounts during = other.counts();
        assertThat(during).isEqualTo(before);
        checkIn(other, SECOND);
        other.awaitSent();
        TABLE.add("two kiosks on one list", seen, before, during, other.counts());
        assertThat(service.checkIns()).extracting(CheckInBody::tag).containsExactly(FIRST, SECOND);
    }

    @Test
    void showsACabinetTakenInHereAndThereAndLetsItBeSweptAgain() throws Exception {
        open();
        other = open("other", 2, new ScriptedRig(), Optional.empty());
        OutboxCounts before = kiosk.counts();
        checkIn(kiosk, FIRST);
        clock.pass(Duration.ofMinutes(2));
        other.gate.fail();
        other.checkIn(FIRST);
        kiosk.awaitSent();
        other.awaitSent();
        kiosk.refresh();
        String seen = kiosk.told("dock-fault-taken-here-and-there");
        assertThat(seen).contains(FIRST.value()).contains("shelf").contains("bench");
        OutboxCounts during = kiosk.counts();
        clock.pass(Duration.ofMinutes(2));
        kiosk.gate.pass();
        kiosk.dock.notice(NoticeAction.CHECK_IN_AGAIN);
        kiosk.await("the visual list", s -> s.phase() == Phase.LOOK);
        kiosk.dock.lookedOver(Set.of());
        kiosk.answer(FIRST);
        kiosk.awaitSent();
        kiosk.refresh();
        TABLE.add("cabinet moved by another dock", seen, before, during, kiosk.counts());
        assertThat(service.checkIns())
                .as("nothing of the three is dropped")
                .extracting(CheckInBody::route)
                .containsExactly(Route.SHELF, Route.BENCH, Route.SHELF);
        assertThat(kiosk.dock.report().orElseThrow().back())
                .singleElement()
                .satisfies(row -> assertThat(row.route()).isEqualTo(Route.SHELF));
    }

    @Test
    void tellsThatTheCabinetAtHandWasJustTakenInElsewhere() throws Exception {
        open();
        other = open("other", 2, new ScriptedRig(), Optional.empty());
        OutboxCounts before = kiosk.counts();
        kiosk.look(FIRST);
        checkIn(other, FIRST);
        other.awaitSent();
        kiosk.refresh();
        String seen = kiosk.told("dock-fault-taken-there");
        assertThat(kiosk.dock.state().phase()).isEqualTo(Phase.LOOK);
        TABLE.add("cabinet at hand taken elsewhere", seen, before, kiosk.counts(), kiosk.counts());
        assertThat(service.checkIns()).hasSize(1);
    }

    @Test
    void takesInWhatComesAfterTheListWasClosedElsewhere() throws Exception {
        open();
        kiosk.refresh();
        service.mood(Mood.BUSY);
        checkIn(kiosk, FIRST);
        OutboxCounts before = kiosk.counts();
        service.closeList();
        service.mood(Mood.WELL);
        kiosk.refresh();
        String seen = kiosk.told("dock-fault-list-closed");
        assertThat(seen).contains("R-1");
        kiosk.dock.notice(NoticeAction.DISMISS);
        OutboxCounts during = kiosk.counts();
        kiosk.dock.scan(SECOND.value());
        kiosk.notice("dock-not-on-list");
        kiosk.gate.pass();
        kiosk.dock.notice(NoticeAction.CHECK_IN_ANYWAY);
        kiosk.await("the visual list", s -> s.phase() == Phase.LOOK);
        kiosk.dock.lookedOver(Set.of());
        kiosk.answer(SECOND);
        kiosk.awaitSent();
        TABLE.add("list closed elsewhere", seen, before, during, kiosk.counts());
        assertThat(service.checkIns()).extracting(CheckInBody::tag).containsExactly(FIRST, SECOND);
        assertThat(service.checkIns()).extracting(CheckInBody::returnListId).containsOnly(SmallHouse.LIST);
    }

    /** A certificate that nobody vouches for, made by the runtime's own tool. */
    private KeyStore selfSigned() throws Exception {
        Path file = folder.resolve("service.p12");
        Process tool = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "keytool")
                                .toString(),
                        "-genkeypair",
                        "-keyalg",
                        "EC",
                        "-alias",
                        "service",
                        "-dname",
                        "CN=127.0.0.1",
                        "-ext",
                        "SAN=ip:127.0.0.1",
                        "-storetype",
                        "PKCS12",
                        "-keystore",
                        file.toString(),
                        "-storepass",
                        new String(PASSWORD))
                .inheritIO()
                .start();
        assertThat(tool.waitFor(60, TimeUnit.SECONDS)).isTrue();
        KeyStore store = KeyStore.getInstance("PKCS12");
        try (InputStream in = Files.newInputStream(file)) {
            store.load(in, PASSWORD);
        }
        return store;
    }

    private static SSLContext serverSide(KeyStore store) throws Exception {
        KeyManagerFactory keys = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
        keys.init(store, PASSWORD);
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(keys.getKeyManagers(), null, null);
        return context;
    }

    private static SSLContext trusting(KeyStore store) throws Exception {
        KeyStore trusted = KeyStore.getInstance("PKCS12");
        trusted.load(null, null);
        trusted.setCertificateEntry("service", store.getCertificate("service"));
        TrustManagerFactory trust = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
        trust.init(trusted);
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(null, trust.getTrustManagers(), null);
        return context;
    }
}
