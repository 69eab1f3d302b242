package org.docksweep.kiosk.dock;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Function;
import org.docksweep.contract.FleetStatus;
import org.docksweep.contract.ReturnReport;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.printing.PaperView;
import org.docksweep.kiosk.printing.Papers;
import org.docksweep.kiosk.printing.PrintResult;
import org.docksweep.kiosk.rig.PlugLog;
import org.docksweep.kiosk.rig.RecordingKeeper;
import org.docksweep.kiosk.rig.RigStanding;
import org.docksweep.kiosk.spool.Spool;
import org.docksweep.paper.RepairTagContent;
import org.docksweep.sweep.CurveCorrection;

/** A dock on a test bench: real state machine and spool; scripted rig and gate. */
final class DockBench extends DockEyes implements AutoCloseable {
    static final Clock CLOCK = Clock.fixed(Instant.parse("2026-05-02T01:30:00Z"), ZoneOffset.UTC);

    final ScriptedRig rig = new ScriptedRig();
    final ScriptedGate gate = new ScriptedGate();
    final List<RepairTagContent> tags = new CopyOnWriteArrayList<>();
    final List<ReturnReport> sheets = new CopyOnWriteArrayList<>();
    final Spool spool;
    final Dock dock;
    volatile RigStanding standing =
            new RigStanding(Reason.of("dock-rig-passed", "21:10"), ReadingState.OK, CurveCorrection.NONE);
    volatile String signedOn = "Ines";
    /** Draws what is to be shown before it is printed. */
    volatile Function<Object, PaperView> views = content -> {
        throw new IllegalStateException("no paper is shown in this test");
    };

    volatile PrintResult printResult = new PrintResult(PrintResult.Outcome.SAVED, Path.of("tag.pdf"), "");

    DockBench(Path folder) {
        this(folder, true, Duration.ZERO, SmallHouse.fleet());
    }

    DockBench(Path folder, boolean leadMovesByItself, Duration answerStays, LocalFleet fleet) {
        this(folder, leadMovesByItself, answerStays, fleet, PlugLog.NONE);
    }

    DockBench(Path folder, boolean leadMovesByItself, Duration answerStays, LocalFleet fleet, PlugLog plugs) {
        spool = Spool.open(folder.resolve("spool"), CLOCK);
        DockParts parts = new DockParts(
                spool,
                rig,
                rig.lead(leadMovesByItself),
                () -> standing,
                gate,
                new RecordingKeeper(folder.resolve("recordings")),
                new RecordedPapers(),
                Link.NONE,
                CLOCK,
                new DockSettings("kiosk-1", 1, () -> signedOn, Locale.ENGLISH, answerStays),
                plugs);
        dock = new Dock(parts, fleet);
        watch(dock);
    }

    @Override
    public void close() {
        dock.close();
        spool.close();
    }

    private final class RecordedPapers implements Papers {
        @Override
        public PrintResult repairTag(RepairTagContent content) {
            tags.add(content);
            return printResult;
        }

        @Override
        public PrintResult returnSheet(ReturnReport report) {
            sheets.add(report);
            return printResult;
        }

        @Override
        public PrintResult statusSheet(FleetStatus status) {
            throw new IllegalStateException("the dock prints no status sheet");
        }

        @Override
        public PaperView viewTag(RepairTagContent content) {
            return views.apply(content);
        }

        @Override
        public PaperView viewSheet(ReturnReport report) {
            return views.apply(report);
        }

        @Override
        public PaperView view(byte[] pdf) {
            throw new IllegalStateException("the dock shows no paper of the service");
        }

        @Override
        public PrintResult pdf(String name, byte[] pdf) {
            throw new IllegalStateException("the dock prints no paper of the service");
        }
    }
}
