package org.docksweep.kiosk.dock;

import java.util.function.Consumer;
import org.docksweep.contract.ReturnReport;

/** Closes a return list with its sheet, which can be printed again while the dock says that the list is closed. */
final class ListClosing {
    private final DockParts parts;
    private final Desk desk;
    private final ListAtHand list;
    private final Consumer<DockState.Notice> teller;
    private ReturnReport closed;

    ListClosing(DockParts parts, Desk desk, ListAtHand list, Consumer<DockState.Notice> teller) {
        this.parts = parts;
        this.desk = desk;
        this.list = list;
        this.teller = teller;
    }

    void close(ReturnReport open) {
        parts.spool().close(open.list().id());
        parts.link().hurry();
        closed = ListAtHand.asClosed(open);
        print(closed);
    }

    /** Prints the sheet of the list closed last once more, as it was. */
    void sheetAgain() {
        if (closed != null) {
            print(closed);
        }
    }

    private void print(ReturnReport report) {
        desk.onPaper(() -> parts.papers().returnSheet(report), result -> {
            // Without a sheet at all the list stays in view, to be closed once more; one that lies in the folder will
            // do.
            if (result.file() != null) {
                list.close(report.list().id());
            }
            teller.accept(PaperWords.sheet(report, result));
        });
    }
}
