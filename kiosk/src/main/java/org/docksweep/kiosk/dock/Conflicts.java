package org.docksweep.kiosk.dock;

import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import org.docksweep.contract.ReturnList;
import org.docksweep.contract.ReturnReport;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Route;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.dock.DockState.NoticeAction;
import org.docksweep.kiosk.fleet.LocalFleet;

/**
 * What a fresh copy of the fleet says against what this dock took for true: a list closed elsewhere, a cabinet another dock took in
 * as well, a clock that is off. Nothing is decided here: it is told, with what a person can do.
 */
final class Conflicts {
    /** Less is no harm to a paper and common with clocks set by hand; common practice, no source. */
    private static final Duration CLOCK_SLACK = Duration.ofMinutes(5);

    private final Untold untold;
    private final Clock clock;
    private boolean clockTold;

    Conflicts(Untold untold, Clock clock) {
        this.untold = untold;
        this.clock = clock;
    }

    void listGone(Optional<ReturnList> atHand, LocalFleet fresh) {
        atHand.filter(list -> fresh.openLists().stream().noneMatch(l -> l.id().equals(list.id())))
                .ifPresent(list -> untold.add(
                        ReadingState.WATCH,
                        Reason.of("dock-fault-list-closed", list.orderNumber()),
                        null,
                        NoticeAction.DISMISS));
    }

    void overtaken(ReturnsBook.Overtaken overtaken) {
        AssetTag tag = overtaken.there().tag();
        untold.add(
                ReadingState.WATCH,
                Reason.of(
                        "dock-fault-taken-here-and-there",
                        tag.value(),
                        place(overtaken.here().route()),
                        place(overtaken.there().route())),
                tag,
                NoticeAction.CHECK_IN_AGAIN,
                NoticeAction.DISMISS);
    }

    void takenWhileAtHand(ReturnReport.Row there) {
        untold.add(
                ReadingState.WATCH,
                Reason.of("dock-fault-taken-there", there.tag().value(), place(there.route())),
                null,
                NoticeAction.DISMISS);
    }

    /** A copy was made a moment ago by the service's clock. */
    void clock(LocalFleet fresh) {
        Duration off =
                Duration.between(clock.instant(), fresh.snapshot().asOf()).abs();
        boolean tooFar = off.compareTo(CLOCK_SLACK) > 0;
        if (tooFar && !clockTold) {
            untold.add(
                    ReadingState.WATCH,
                    Reason.of("dock-fault-clock", Long.toString(off.toMinutes())),
                    null,
                    NoticeAction.DISMISS);
        }
        clockTold = tooFar;
    }

    private static String place(Route route) {
        return switch (route) {
            case SHELF -> "@dock-fault-shelf";
            case BENCH -> "@dock-place-bench";
            case SAFETY_HOLD -> "@dock-place-safety-hold";
            case MANUAL_HOLD -> "@dock-place-manual-hold";
        };
    }
}
