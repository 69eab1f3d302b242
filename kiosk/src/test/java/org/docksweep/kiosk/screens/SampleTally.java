package org.docksweep.kiosk.screens;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.dock.DockState.ModelTally;
import org.docksweep.kiosk.dock.DockState.Returns;
import org.docksweep.kiosk.dock.DockState.ScanEcho;
import org.docksweep.kiosk.dock.DockState.Slot;
import org.docksweep.kiosk.dock.DockState.SlotState;

/** The return list of the samples, and what was scanned before. */
final class SampleTally {
    private SampleTally() {}

    static Returns list(List<Slot> unexpected) {
        return new Returns(
                "R-2031-118",
                "Harbour Stage Company",
                24,
                17,
                3,
                List.of(
                        tally(SampleHouse.TWO_WAY, 110, "SSSSSSAN"),
                        tally(SampleHouse.BIAMPED, 210, "SSBS"),
                        tally(SampleHouse.SUB, 310, "SSWN"),
                        tally(SampleHouse.WEDGE, 410, "SSNN"),
                        tally(SampleHouse.THREE_WAY, 510, "BH"),
                        tally(SampleHouse.POWERED, 610, "SN")),
                unexpected);
    }

    private static ModelTally tally(CabinetModel model, int first, String states) {
        List<Slot> slots = new ArrayList<>();
        for (int i = 0; i < states.length(); i++) {
            SlotState state = switch (states.charAt(i)) {
                case 'S' -> SlotState.SHELF;
                case 'A' -> SlotState.AT_HAND;
                case 'W' -> SlotState.WATCH;
                case 'B' -> SlotState.BENCH;
                case 'H' -> SlotState.HOLD;
                default -> SlotState.NOT_YET;
            };
            slots.add(slot(first + i, state));
        }
        return new ModelTally(model, slots);
    }

    static Slot slot(int number, SlotState state) {
        return new Slot(new AssetTag("MCH-000" + number), state);
    }

    /** Scans before a moment, newest first. */
    static List<ScanEcho> scans(Instant now) {
        return List.of(
                echo(now, "MCH-000117", 60, "dock-scan-read", ReadingState.OK, "MCH-000117"),
                echo(now, "MCH-000116", 95, "dock-scan-read", ReadingState.OK, "MCH-000116"),
                echo(now, "~MCH-000213~", 140, "dock-scan-cleaned", ReadingState.WATCH, "MCH-000213"),
                echo(now, "MCH-004711", 190, "dock-unknown-tag", ReadingState.FAULT, "MCH-004711"));
    }

    private static ScanEcho echo(
            Instant now, String text, int secondsAgo, String reason, ReadingState state, String argument) {
        return new ScanEcho(text, now.minusSeconds(secondsAgo), Reason.of(reason, argument), state);
    }
}
