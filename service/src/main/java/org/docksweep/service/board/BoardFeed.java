package org.docksweep.service.board;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.AuditEntry;
import org.docksweep.contract.BoardEvent;
import org.docksweep.service.audit.Audit;
import org.springframework.stereotype.Component;

/**
 * What changed, in the order of the audit log: its lines are written in the transactions they tell of, on whichever
 * service, so that no write is without its event.
 *
 * <p>A number that is missing may belong to a transaction that is not committed yet. Nothing behind such a gap is told
 * until it is filled or the line behind it is older than {@link #PATIENCE}; then it was left out for good.
 */
@Component
class BoardFeed {
    private static final Duration PATIENCE = Duration.ofSeconds(10);
    private static final int LINES_AT_ONCE = 500;
    private static final String ROOT = ApiPaths.API + "/";
    private static final Set<String> TOPICS = Set.of(
            "cabinets",
            "check-ins",
            "bench-jobs",
            "return-lists",
            "dispatches",
            "parts",
            "stock-moves",
            "spare-repairs");

    private final Audit audit;
    private final Clock clock;

    BoardFeed(Audit audit, Clock clock) {
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Some events.
     *
     * @param events in order
     * @param position where to go on
     */
    record Part(List<BoardEvent> events, long position) {}

    /** Where to begin for somebody who looks at everything first: nothing committed later is before it. */
    long now() {
        long newest = audit.newest();
        return settled(Math.max(0, newest - LINES_AT_ONCE), false).position();
    }

    Part after(long position) {
        return settled(position, true);
    }

    private Part settled(long position, boolean firstMustFollow) {
        Instant given = clock.instant().minus(PATIENCE);
        List<BoardEvent> events = new ArrayList<>();
        long reached = position;
        boolean mustFollow = firstMustFollow;
        for (AuditEntry line : audit.entriesAfter(position, LINES_AT_ONCE)) {
            if (mustFollow && line.number() != reached + 1 && line.at().isAfter(given)) {
                break;
            }
            mustFollow = true;
            reached = line.number();
            String topic = topic(line);
            if (topic != null) {
                events.add(new BoardEvent(line.number(), line.at(), topic, line.target()));
            }
        }
        return new Part(List.copyOf(events), reached);
    }

    private static String topic(AuditEntry line) {
        if (line.outcome() != AuditEntry.Outcome.STORED || !line.target().startsWith(ROOT)) {
            return null;
        }
        String path = line.target().substring(ROOT.length());
        int end = path.indexOf('/');
        String topic = end < 0 ? path : path.substring(0, end);
        return TOPICS.contains(topic) ? topic : null;
    }
}
