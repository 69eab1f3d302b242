package org.docksweep.kiosk.dock;

import java.util.List;
import java.util.Optional;
import org.docksweep.contract.ReturnReport;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.dock.DockState.Notice;
import org.docksweep.kiosk.dock.DockState.NoticeAction;
import org.docksweep.kiosk.dock.DockState.TagPrint;
import org.docksweep.kiosk.printing.PrintResult;

/** What the dock says of papers. Pure functions. */
final class PaperWords {
    private PaperWords() {}

    static TagPrint state(PrintResult.Outcome outcome) {
        return switch (outcome) {
            case PRINTED -> TagPrint.PRINTED;
            case WAITS_AT_PRINTER -> TagPrint.WAITS_AT_PRINTER;
            case SAVED -> TagPrint.SAVED_TO_FOLDER;
            case FAILED -> TagPrint.FAILED;
        };
    }

    /** Empty when nothing is wrong with a tag. */
    static Optional<Notice> tag(AssetTag tag, PrintResult result) {
        return switch (result.outcome()) {
            case FAILED ->
                Optional.of(notice(ReadingState.FAULT, Reason.of("dock-tag-not-printed", tag.value(), result.words())));
            case WAITS_AT_PRINTER ->
                Optional.of(notice(ReadingState.WATCH, Reason.of("dock-fault-tag-waits", tag.value(), result.words())));
            case PRINTED, SAVED -> Optional.empty();
        };
    }

    /** How the list was closed, or that its sheet did not come out. */
    static Notice sheet(ReturnReport r, PrintResult result) {
        return switch (result.outcome()) {
            case FAILED ->
                notice(
                        ReadingState.FAULT,
                        Reason.of("dock-sheet-not-printed", r.list().orderNumber(), result.words()));
            case WAITS_AT_PRINTER ->
                closed(
                        ReadingState.WATCH,
                        Reason.of("dock-fault-sheet-waits", r.list().orderNumber(), result.words()));
            case PRINTED, SAVED ->
                closed(
                        ReadingState.OK,
                        Reason.of(
                                "dock-list-closed",
                                r.list().orderNumber(),
                                Integer.toString(r.back().size()),
                                Integer.toString(r.list().lines().size()),
                                Integer.toString(r.missing().size()),
                                Integer.toString(r.unexpected().size())));
        };
    }

    private static Notice closed(ReadingState state, Reason text) {
        return new Notice(state, text, List.of(NoticeAction.SHEET_AGAIN, NoticeAction.DISMISS));
    }

    private static Notice notice(ReadingState state, Reason text) {
        return new Notice(state, text, List.of(NoticeAction.DISMISS));
    }
}
