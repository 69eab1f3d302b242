package org.docksweep.kiosk.dock;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.ResourceBundle;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Reasons;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.fleet.SnapshotRefresher;
import org.docksweep.kiosk.printing.PaperDesk;
import org.docksweep.kiosk.printing.PrintQueue;
import org.docksweep.kiosk.rig.Lead;
import org.docksweep.kiosk.rig.RecordingKeeper;
import org.docksweep.kiosk.rig.RigStanding;
import org.docksweep.kiosk.service.ServiceClient;
import org.docksweep.kiosk.service.ServiceCourier;
import org.docksweep.kiosk.spool.Backoff;
import org.docksweep.kiosk.spool.OutboxCounts;
import org.docksweep.kiosk.spool.OutboxSender;
import org.docksweep.kiosk.spool.ParkedTeller;
import org.docksweep.kiosk.spool.Spool;
import org.docksweep.kiosk.spool.Trouble;
import org.docksweep.paper.PaperContext;
import org.docksweep.paper.TagForm;
import org.docksweep.sweep.CurveCorrection;
import org.docksweep.sweep.Rig;

/** A kiosk put together as its command does, with real memory, sender, way to the service and papers; only the gate is scripted. */
final class FaultDock extends DockEyes implements AutoCloseable {
    private static final Backoff SHORT = new Backoff(Duration.ofMillis(20), Duration.ofMillis(100));
    private static final Duration ANSWER_TIME = Duration.ofMillis(500);
    private static final ResourceBundle SCREEN =
            ResourceBundle.getBundle("org.docksweep.kiosk.screens.screens", Locale.ENGLISH);

    final ScriptedGate gate = new ScriptedGate();
    final Spool spool;
    final Dock dock;
    final OutboxSender sender;
    private final SnapshotRefresher refresher;

    /**
     * What may differ from kiosk to kiosk.
     *
     * @param folder its data folder
     * @param number its number
     * @param rig its rig
     * @param queue its printer
     * @param form form of its tags
     * @param clock its clock
     */
    record Setting(Path folder, int number, Rig rig, Optional<PrintQueue> queue, TagForm form, Clock clock) {
        Setting(Path folder, int number, Rig rig, Optional<PrintQueue> queue, Clock clock) {
            this(folder, number, rig, queue, TagForm.A5_LANDSCAPE, clock);
        }
    }

    FaultDock(Setting setting, FaultService service) {
        spool = Spool.open(setting.folder().resolve("spool"), setting.clock());
        RecordingKeeper recordings = new RecordingKeeper(setting.folder().resolve("recordings"));
        ServiceClient client = new ServiceClient(service.address(), "token");
        ServiceClient hasty = new ServiceClient(service.address(), "token", ANSWER_TIME);
        ParkedTeller teller = new ParkedTeller(spool);
        sender = new OutboxSender(spool, new ServiceCourier(hasty, recordings::checked), SHORT, teller);
        DockParts parts = new DockParts(
                spool,
                setting.rig(),
                lead(),
                () -> new RigStanding(Reason.of("dock-rig-passed", "21:10"), ReadingState.OK, CurveCorrection.NONE),
                gate,
                recordings,
                new PaperDesk(
                        setting.folder().resolve("papers"),
                        List.of(setting.form()),
                        setting.queue(),
                        () -> new PaperContext(
                                "Small House",
                                java.time.ZoneOffset.UTC,
                                Locale.ENGLISH,
                                "Ines",
                                setting.clock().instant(),
                                "test")),
                new SenderLink(),
                setting.clock(),
                new DockSettings(
                        "kiosk-0" + setting.number(), setting.number(), "Ines", Locale.ENGLISH, Duration.ZERO));
        dock = new Dock(parts, new LocalFleet(spool.snapshot().orElseGet(SmallHouse::snapshot), spool.registered()));
        refresher = new SnapshotRefresher(client, spool, dock::fleetRefreshed);
        watch(dock);
        teller.tell(dock::recordParked);
        sender.start();
    }

    private static Lead lead() {
        return new ScriptedRig().lead(true);
    }

    /** Fetches the service's copy, as the kiosk does every half minute. */
    void refresh() throws Exception {
        refresher.once();
    }

    OutboxCounts counts() {
        return spool.outbox().counts();
    }

    /** Waits until the top strip names a trouble, and gives its words. */
    String strip(Trouble trouble) throws InterruptedException {
        await("the trouble " + trouble, s -> s.strip().trouble().equals(Optional.of(trouble)));
        return SCREEN.getString("strip.trouble." + trouble);
    }

    /** Waits until everything is at the service and the strip is calm. */
    void awaitSent() throws InterruptedException {
        sender.hurry();
        await(
                "everything sent",
                s -> s.strip().waitingToSend() == 0 && s.strip().trouble().isEmpty());
    }

    /** Waits for a notice, and gives its sentence as it stands on the screen. */
    String told(String key) throws InterruptedException {
        return Reasons.text(notice(key).notice().orElseThrow().text(), Locale.ENGLISH);
    }

    @Override
    public void close() {
        refresher.close();
        dock.close();
        sender.close();
        spool.close();
    }

    private final class SenderLink implements Link {
        @Override
        public boolean reachable() {
            return sender.reachable();
        }

        @Override
        public Optional<Trouble> trouble() {
            return sender.trouble();
        }

        @Override
        public void hurry() {
            sender.hurry();
        }
    }
}
