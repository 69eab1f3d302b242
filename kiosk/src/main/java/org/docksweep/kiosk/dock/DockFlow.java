package org.docksweep.kiosk.dock;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.ReturnList;
import org.docksweep.contract.ReturnReport;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.VisualItem;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.dock.DockState.NoticeAction;
import org.docksweep.kiosk.dock.DockState.Phase;
import org.docksweep.kiosk.dock.DockState.TagPrint;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.fleet.SafetyTests;
import org.docksweep.kiosk.printing.PaperView;
import org.docksweep.kiosk.spool.ParkedItem;
import org.docksweep.kiosk.spool.SpoolException;

/**
 * The state machine of the dock: what a scan means, which cabinet is at hand, what is recorded and printed. Lives on
 * the dock's thread only.
 */
final class DockFlow {
    private final DockParts parts;
    private final Desk desk;
    private final Picture picture = new Picture();
    private final ReturnsBook book = new ReturnsBook();
    private final AnswerMaker answers;
    private final DockPapers papers;
    private final StripMaker strip;
    private final LeadWatch lead = new LeadWatch();
    private final Untold untold = new Untold();
    private final Conflicts conflicts;
    private final Deque<AssetTag> queued = new ArrayDeque<>();
    private final ListAtHand list;
    private final ListClosing closing;
    private LocalFleet fleet;
    private CheckInFlow checkIn;
    private AssetTag noticeTag;
    private CheckInBody shown;

    DockFlow(DockParts parts, Desk desk, LocalFleet fleet) {
        this.parts = parts;
        this.desk = desk;
        this.fleet = fleet;
        this.answers = new AnswerMaker(parts.settings().locale());
        papers = new DockPapers(parts, desk, answers, book, this::tell);
        strip = new StripMaker(parts);
        list = new ListAtHand(fleet);
        closing = new ListClosing(parts, desk, list, this::tell);
        conflicts = new Conflicts(untold, parts.clock());
        parts.spool().recentCheckIns().forEach(book::add);
        book.takeOver(fleet, list.id()).forEach(conflicts::overtaken);
        parts.spool()
                .setAside()
                .ifPresent(file -> picture.notice(
                        ReadingState.FAULT,
                        Reason.of(
                                "dock-spool-set-aside",
                                file.toString(),
                                Integer.toString(parts.spool().restored())),
                        NoticeAction.DISMISS));
    }

    void refreshed(LocalFleet fresh) {
        conflicts.listGone(list.in(fleet), fresh);
        conflicts.clock(fresh);
        fleet = fresh;
        list.refreshed(fleet);
        boolean knownBefore = earlierOfAtHand().isPresent();
        book.takeOver(fleet, list.id()).forEach(conflicts::overtaken);
        earlierOfAtHand().filter(e -> !knownBefore).map(ReturnsBook.Entry::row).ifPresent(conflicts::takenWhileAtHand);
    }

    private Optional<ReturnsBook.Entry> earlierOfAtHand() {
        return atWork()
                ? book.find(
                        checkIn.draft().returnListId, checkIn.draft().cabinet.tag())
                : Optional.empty();
    }

    void scanned(String text) {
        scanned(text, false);
    }

    /** A scan from before: comes after the cabinet at hand. */
    void scannedNext(String text) {
        scanned(text, true);
    }

    private void scanned(String text, boolean after) {
        Instant now = parts.clock().instant();
        ScannedText read = ScannedText.read(text, fleet);
        if (read instanceof ScannedText.Cabinet cabinet) {
            scanned(text, cabinet.tag(), cabinet.cleaned(), after, now);
        } else if (read instanceof ScannedText.Refused refused) {
            refuse(text, now, refused.why());
        }
    }

    private void refuse(String text, Instant now, Reason reason) {
        if (!atWork()) {
            idle();
        }
        picture.echo(text, now, reason, ReadingState.FAULT);
        picture.notice(ReadingState.FAULT, reason, NoticeAction.DISMISS);
        noticeTag = null;
    }

    private void scanned(String text, AssetTag tag, boolean cleaned, boolean after, Instant now) {
        if (atWork() && tag.equals(checkIn.draft().cabinet.tag())) {
            picture.echo(text, now, Reason.of("dock-scan-same", tag.value()), ReadingState.OK);
            return;
        }
        boolean midCabinet = atWork() && (after || checkIn.busy() || picture.phase == Phase.PLUG);
        if (midCabinet) {
            enqueue(text, tag, now);
            return;
        }
        if (atWork()) {
            setAsideUnfinished();
        }
        lookUp(tag);
        // What the dock has to say to a scan is how the scan came out: an unknown tag was not simply read.
        Reason read = Reason.of(cleaned ? "dock-scan-cleaned" : "dock-scan-read", tag.value());
        picture.echo(
                text,
                now,
                picture.notice.map(DockState.Notice::text).orElse(read),
                picture.notice.map(DockState.Notice::state).orElse(cleaned ? ReadingState.WATCH : ReadingState.OK));
    }

    private boolean atWork() {
        return checkIn != null;
    }

    private void enqueue(String text, AssetTag tag, Instant now) {
        if (!queued.contains(tag)) {
            queued.addLast(tag);
        }
        Reason reason = Reason.of(
                "dock-scan-queued", tag.value(), checkIn.draft().cabinet.tag().value());
        picture.echo(text, now, reason, ReadingState.WATCH);
        picture.notice(ReadingState.WATCH, reason, NoticeAction.DISMISS);
        noticeTag = tag;
    }

    /** Another tag was scanned before this cabinet was swept, or instead of its wrong label. */
    private void setAsideUnfinished() {
        AssetTag left = checkIn.draft().cabinet.tag();
        checkIn.abandon();
        checkIn = null;
        picture.clear();
        picture.echo(
                left.value(),
                parts.clock().instant(),
                Reason.of("dock-left-unfinished", left.value()),
                ReadingState.WATCH);
    }

    private void lookUp(AssetTag tag) {
        noticeTag = tag;
        Optional<CabinetBody> cabinet = fleet.cabinet(tag);
        Optional<ReturnList> its = fleet.openListOf(tag);
        UUID listId = its.map(ReturnList::id).orElse(list.id());
        if (cabinet.isEmpty()) {
            idle();
            picture.notice(
                    ReadingState.FAULT,
                    Reason.of("dock-unknown-tag", tag.value()),
                    NoticeAction.REGISTER,
                    NoticeAction.DISMISS);
            return;
        }
        Optional<ReturnsBook.Entry> earlier = book.find(listId, tag);
        if (earlier.isPresent()) {
            showEarlier(cabinet.get(), earlier.get());
        } else if (its.isEmpty()) {
            idle();
            picture.notice(
                    ReadingState.WATCH,
                    Reason.of("dock-not-on-list", tag.value()),
                    NoticeAction.CHECK_IN_ANYWAY,
                    NoticeAction.DISMISS);
        } else {
            list.take(listId);
            begin(cabinet.get());
        }
    }

    /**
     * Nothing is at hand. The answer given before goes: the person holds another cabinet by now, and a large PASS would be read as that
     * one's.
     */
    private void idle() {
        picture.none();
        shown = null;
    }

    private void begin(CabinetBody cabinet) {
        CabinetModel model = fleet.modelOf(cabinet);
        picture.clear();
        picture.cabinet(cabinet, model, Routing.unjudged(model));
        shown = null;
        noticeTag = null;
        UUID listId = fleet.openListOf(cabinet.tag()).map(ReturnList::id).orElse(list.id());
        Draft draft = new Draft(cabinet, model, listId, parts.clock().instant());
        checkIn = new CheckInFlow(parts, desk, picture, fleet, draft, this::finished);
    }

    private void showEarlier(CabinetBody cabinet, ReturnsBook.Entry earlier) {
        CabinetModel model = fleet.modelOf(cabinet);
        Optional<CheckInBody> here = earlier.checkIn().flatMap(parts.spool()::checkIn);
        picture.clear();
        picture.phase = Phase.ANSWER;
        picture.cabinet(cabinet, model, here.map(CheckInBody::positions).orElseGet(() -> Routing.unjudged(model)));
        picture.answer = Optional.of(answers.of(earlier, here, cabinet));
        shown = here.orElse(null);
        here.ifPresent(b -> picture.curve = curveOf(b));
        picture.notice(
                ReadingState.WATCH,
                Reason.of("dock-already-checked-in", cabinet.tag().value()),
                NoticeAction.CHECK_IN_AGAIN,
                NoticeAction.DISMISS);
        noticeTag = cabinet.tag();
    }

    void lookedOver(Set<VisualItem> damage) {
        if (atWork()) {
            checkIn.lookedOver(damage);
        }
    }

    void goOn() {
        if (atWork()) {
            checkIn.goOn();
        }
    }

    void holdForPerson() {
        if (atWork()) {
            checkIn.holdForPerson();
        }
    }

    void notice(NoticeAction action) {
        AssetTag tag = noticeTag;
        boolean offered =
                picture.notice.filter(n -> n.actions().contains(action)).isPresent();
        if (!offered) {
            return;
        }
        picture.notice = Optional.empty();
        noticeTag = null;
        switch (action) {
            case DISMISS -> queued.remove(tag);
            case CHECK_IN_ANYWAY, CHECK_IN_AGAIN -> checkInAllTheSame(tag);
            case SEND_AGAIN -> {
                parts.spool().outbox().tryParkedAgain();
                parts.link().hurry();
            }
            case SHOW_EARLIER -> lookUp(tag);
            case SHEET_AGAIN -> closing.sheetAgain();
            // The choice of a model follows; the tag is still meant.
            case REGISTER -> noticeTag = tag;
        }
    }

    private void checkInAllTheSame(AssetTag tag) {
        if (atWork()) {
            enqueue(tag.value(), tag, parts.clock().instant());
        } else {
            fleet.cabinet(tag).ifPresent(this::begin);
        }
    }

    void register(String modelCode) {
        AssetTag tag = noticeTag;
        if (tag == null || fleet.cabinet(tag).isPresent() || atWork()) {
            return;
        }
        boolean known = fleet.snapshot().book().cabinetModels().stream()
                .anyMatch(m -> m.code().equals(modelCode));
        if (!known) {
            picture.notice(
                    ReadingState.FAULT,
                    Reason.of("dock-unknown-model", modelCode, tag.value()),
                    NoticeAction.REGISTER,
                    NoticeAction.DISMISS);
            return;
        }
        CabinetBody cabinet = new CabinetBody(tag, modelCode, "", CabinetStatus.OUT, false, List.of());
        parts.spool().register(cabinet);
        parts.link().hurry();
        fleet = fleet.with(cabinet);
        begin(cabinet);
    }

    private void finished(Draft draft, Routing.Routed routed) {
        JobCode jobCode = routed.route() == Route.BENCH
                ? parts.spool().nextJobCode(parts.settings().kioskNumber())
                : null;
        CheckInBody body = draft.body(
                routed,
                jobCode,
                fleet.snapshot().limits().version(),
                parts.settings(),
                parts.clock().instant());
        // Durable before the screen says done.
        parts.spool().record(body);
        parts.link().hurry();
        book.add(body);
        checkIn = null;
        shown = body;
        noticeTag = null;
        picture.notice = Optional.empty();
        SafetyTests.reminder(draft.cabinet, LocalDate.ofInstant(parts.clock().instant(), fleet.zone()))
                .ifPresent(words -> picture.notice(ReadingState.WATCH, words, NoticeAction.DISMISS));
        lead.seen(body).ifPresent(words -> picture.notice(ReadingState.WATCH, words, NoticeAction.DISMISS));
        picture.phase = Phase.ANSWER;
        picture.positions(body.positions());
        picture.curve = curveOf(body);
        picture.answer =
                Optional.of(answers.of(body, draft.cabinet, jobCode == null ? TagPrint.NOT_NEEDED : TagPrint.PRINTING));
        if (jobCode != null) {
            print(body);
        }
        if (!queued.isEmpty()) {
            desk.later(parts.settings().answerStays(), this::takeQueued);
        }
    }

    private void takeQueued() {
        if (!atWork() && !queued.isEmpty()) {
            lookUp(queued.removeFirst());
            if (!atWork() && !queued.isEmpty()) {
                desk.later(parts.settings().answerStays(), this::takeQueued);
            }
        }
    }

    void printTag() {
        if (shown != null && shown.jobCode() != null) {
            picture.tagPrint(TagPrint.PRINTING);
            print(shown);
        }
    }

    void viewTag(Consumer<PaperView> taker) {
        if (shown != null && shown.jobCode() != null) {
            papers.view(shown, fleet, taker);
        }
    }

    void viewSheet(Consumer<PaperView> taker) {
        report().map(ListAtHand::asClosed).ifPresent(r -> papers.view(r, taker));
    }

    private void print(CheckInBody body) {
        papers.print(body, fleet, result -> {
            boolean stillShown = shown != null && shown.id().equals(body.id());
            PaperWords.tag(body.tag(), result).ifPresent(this::tell);
            if (stillShown) {
                picture.tagPrint(PaperWords.state(result.outcome()));
            }
        });
    }

    private void tell(DockState.Notice notice) {
        // A paper that comes out does not wipe away a refusal nobody has answered.
        picture.notice.ifPresent(untold::again);
        noticeTag = null;
        picture.notice = Optional.of(notice);
    }

    Optional<ReturnReport> report() {
        return list.in(fleet).map(open -> book.report(open, parts.clock().instant()));
    }

    void closeList() {
        Optional<ReturnReport> report = report();
        if (report.isEmpty() || atWork()) {
            picture.notice(
                    ReadingState.WATCH,
                    Reason.of(atWork() ? "dock-close-unfinished" : "dock-close-nothing"),
                    NoticeAction.DISMISS);
            return;
        }
        parts.spool().outbox().parked().stream().map(ParkedItem::words).forEach(untold::parked);
        closing.close(report.get());
    }

    void tell(ReadingState seriousness, Reason text) {
        noticeTag = null;
        picture.notice(seriousness, text, NoticeAction.DISMISS);
    }

    void recordParked(String words) {
        untold.parked(words);
    }

    /** Something went wrong that nobody foresaw: say so, record nothing, and let the person begin the cabinet again. */
    void defect(RuntimeException e) {
        if (checkIn != null) {
            checkIn.abandon();
            checkIn = null;
        }
        picture.progress = Optional.empty();
        picture.answer = Optional.empty();
        picture.phase = Phase.READY;
        picture.notice(
                ReadingState.FAULT,
                Reason.of(
                        e instanceof SpoolException ? "dock-fault-not-stored" : "dock-defect",
                        e.getMessage() == null ? e.toString() : e.getMessage()),
                NoticeAction.DISMISS);
    }

    void progress(Draft draft, DockState.SweepProgress progress) {
        if (atWork() && checkIn.draft() == draft && checkIn.busy() && picture.phase != Phase.JUDGE) {
            picture.progress = Optional.of(progress);
        }
    }

    DockState state() {
        if (picture.notice.isEmpty() && noticeTag == null) {
            untold.next().ifPresent(word -> {
                picture.notice = Optional.of(word.notice());
                noticeTag = word.tag();
            });
        }
        AssetTag atHand = atWork() ? checkIn.draft().cabinet.tag() : null;
        Optional<DockState.Returns> returns =
                list.in(fleet).map(open -> book.picture(open, fleet.snapshot().book(), atHand));
        return picture.state(strip.strip(fleet), returns, fleet, Optional.ofNullable(queued.peekFirst()));
    }

    private Optional<DockState.CurvePicture> curveOf(CheckInBody body) {
        return answers.curve(body, fleet);
    }
}
