package org.docksweep.kiosk.dock;

import java.time.LocalDate;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.ReturnReport;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.dock.DockState.Notice;
import org.docksweep.kiosk.dock.DockState.NoticeAction;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.printing.PaperView;
import org.docksweep.kiosk.printing.PrintResult;
import org.docksweep.paper.RepairTagContent;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Tags and sheets of the dock, looked at or printed. Lives on the dock's thread only; papers are made on their own. */
final class DockPapers {
    private static final Logger LOG = LoggerFactory.getLogger(DockPapers.class);

    private final DockParts parts;
    private final Desk desk;
    private final AnswerMaker answers;
    private final ReturnsBook book;
    private final Consumer<Notice> tell;

    DockPapers(DockParts parts, Desk desk, AnswerMaker answers, ReturnsBook book, Consumer<Notice> tell) {
        this.parts = parts;
        this.desk = desk;
        this.answers = answers;
        this.book = book;
        this.tell = tell;
    }

    void print(CheckInBody body, LocalFleet fleet, Consumer<PrintResult> done) {
        RepairTagContent content = tag(body, fleet);
        desk.onPaper(() -> parts.papers().repairTag(content), done);
    }

    void view(CheckInBody body, LocalFleet fleet, Consumer<PaperView> taker) {
        RepairTagContent content = tag(body, fleet);
        view(() -> parts.papers().viewTag(content), taker);
    }

    void view(ReturnReport report, Consumer<PaperView> taker) {
        view(() -> parts.papers().viewSheet(report), taker);
    }

    /** A paper that cannot be drawn stops nothing: it may be printed all the same. */
    private void view(Supplier<PaperView> draw, Consumer<PaperView> taker) {
        desk.<Runnable>onPaper(
                () -> {
                    try {
                        PaperView view = draw.get();
                        return () -> taker.accept(view);
                    } catch (RuntimeException e) {
                        LOG.warn("A paper cannot be drawn", e);
                        Reason words = Reason.of("dock-paper-not-drawn", String.valueOf(e.getMessage()));
                        return () -> tell.accept(new Notice(ReadingState.WATCH, words, List.of(NoticeAction.DISMISS)));
                    }
                },
                Runnable::run);
    }

    private RepairTagContent tag(CheckInBody body, LocalFleet fleet) {
        LocalDate needOn = book.toBenchBefore(body, fleet.snapshot().asOf())
                .flatMap(before -> fleet.needOn(body.modelCode(), before))
                .orElse(null);
        return answers.tag(body, fleet, needOn);
    }
}
