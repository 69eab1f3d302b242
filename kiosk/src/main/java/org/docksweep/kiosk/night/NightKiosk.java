package org.docksweep.kiosk.night;

import java.io.IOException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.docksweep.contract.DemoHouse;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.kiosk.Version;
import org.docksweep.kiosk.bench.Bench;
import org.docksweep.kiosk.bench.BenchParts;
import org.docksweep.kiosk.dock.Dock;
import org.docksweep.kiosk.dock.DockParts;
import org.docksweep.kiosk.dock.DockSettings;
import org.docksweep.kiosk.dock.Gate;
import org.docksweep.kiosk.dock.Link;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.listening.Listening;
import org.docksweep.kiosk.listening.OutputEarphones;
import org.docksweep.kiosk.printing.PaperDesk;
import org.docksweep.kiosk.printing.Papers;
import org.docksweep.kiosk.rig.Lead;
import org.docksweep.kiosk.rig.RecordingKeeper;
import org.docksweep.kiosk.rig.RigStanding;
import org.docksweep.kiosk.service.ServiceClient;
import org.docksweep.kiosk.service.ServiceCourier;
import org.docksweep.kiosk.spool.Backoff;
import org.docksweep.kiosk.spool.OutboxSender;
import org.docksweep.kiosk.spool.ParkedTeller;
import org.docksweep.kiosk.spool.Spool;
import org.docksweep.kiosk.spool.Trouble;
import org.docksweep.paper.PaperContext;
import org.docksweep.paper.TagForm;
import org.docksweep.sweep.PracticeRig;

/** The kiosk of a night: real spool, dock, sender and papers around the virtual rig. */
final class NightKiosk implements AutoCloseable {
    static final String KIOSK_ID = "kiosk-01";
    /** A night is short: after a restart of the service the kiosk should not wait half a minute. */
    private static final Backoff NIGHT_BACKOFF = new Backoff(Duration.ofMillis(50), Duration.ofSeconds(2));

    private final Spool spool;
    private final RecordingKeeper recordings;
    private final Papers papers;
    private final Dock dock;
    private final DockParts parts;
    private final LocalFleet fleet;
    private final Listening listening;
    private Bench bench;
    private final PracticeRig rig;
    private final ParkedTeller teller;
    private final AtomicReference<OutboxSender> sender = new AtomicReference<>();

    NightKiosk(
            Path folder,
            DemoHouse house,
            Spool spool,
            KioskSnapshot snapshot,
            PracticeRig rig,
            Gate gate,
            RigStanding standing) {
        this.spool = spool;
        this.rig = rig;
        Clock clock = Clock.systemUTC();
        teller = new ParkedTeller(spool);
        recordings = new RecordingKeeper(folder.resolve("recordings"));
        fleet = new LocalFleet(snapshot, spool.registered());
        papers = new PaperDesk(
                folder.resolve("papers"),
                List.of(TagForm.A5_LANDSCAPE, TagForm.LABEL_100_X_150),
                Optional.empty(),
                () -> new PaperContext(
                        house.siteName(),
                        fleet.zone(),
                        Locale.ENGLISH,
                        house.dockHand(),
                        Instant.now(),
                        Version.text()));
        parts = new DockParts(
                spool,
                rig,
                Lead.of(rig),
                () -> standing,
                gate,
                recordings,
                papers,
                new SenderLink(),
                clock,
                new DockSettings(KIOSK_ID, 1, house.dockHand(), Locale.ENGLISH, Duration.ZERO));
        // Nobody listens in an invented night.
        listening = new Listening(new OutputEarphones(null, output -> false), folder.resolve("sounds"));
        dock = new Dock(parts, fleet);
    }

    static Path spoolFolder(Path nightFolder) {
        return nightFolder.resolve("kiosk");
    }

    /** The bench, which shares rig, gate and papers with the dock. */
    synchronized Bench bench(ServiceClient client, String technician) {
        if (bench == null) {
            bench = new Bench(
                    new BenchParts(parts.withOperator(technician), client, () -> fleet, "bench-01", listening));
        }
        return bench;
    }

    PracticeRig rig() {
        return rig;
    }

    Dock dock() {
        return dock;
    }

    Spool spool() {
        return spool;
    }

    RecordingKeeper recordings() {
        return recordings;
    }

    Papers papers() {
        return papers;
    }

    /** Sends the outbox to a service from now on; a sender before it is closed. */
    void sendTo(ServiceClient client) {
        OutboxSender next = new OutboxSender(
                spool, new ServiceCourier(client, recordings::checked), NIGHT_BACKOFF, this::outboxChanged);
        OutboxSender before = sender.getAndSet(next);
        if (before != null) {
            before.close();
        }
        teller.tell(dock::recordParked);
        next.start();
    }

    private void outboxChanged() {
        teller.run();
        synchronized (sender) {
            sender.notifyAll();
        }
    }

    /** Waits until everything is at the service. */
    void awaitSent(Duration patience) throws IOException, InterruptedException {
        long deadline = System.nanoTime() + patience.toNanos();
        sender.get().hurry();
        synchronized (sender) {
            while (spool.outbox().counts().waiting() > 0) {
                long leftMs = (deadline - System.nanoTime()) / 1_000_000;
                if (leftMs <= 0) {
                    throw new IOException(spool.outbox().counts().waiting() + " records were not sent within "
                            + patience.toSeconds() + " s");
                }
                sender.wait(Math.min(leftMs, 500));
            }
        }
    }

    static String newToken() {
        byte[] bytes = new byte[32];
        new SecureRandom().nextBytes(bytes);
        return HexFormat.of().formatHex(bytes);
    }

    @Override
    public void close() {
        synchronized (this) {
            if (bench != null) {
                bench.close();
            }
        }
        dock.close();
        OutboxSender last = sender.get();
        if (last != null) {
            last.close();
        }
        rig.close();
        spool.close();
    }

    /** The dock sees the sender of the moment. */
    private final class SenderLink implements Link {
        @Override
        public boolean reachable() {
            OutboxSender now = sender.get();
            return now != null && now.reachable();
        }

        @Override
        public Optional<Trouble> trouble() {
            OutboxSender now = sender.get();
            return now == null ? Optional.of(Trouble.UNREACHABLE) : now.trouble();
        }

        @Override
        public void hurry() {
            OutboxSender now = sender.get();
            if (now != null) {
                now.hurry();
            }
        }
    }
}
