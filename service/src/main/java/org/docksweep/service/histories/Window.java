package org.docksweep.service.histories;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import org.docksweep.contract.Timeline;

/**
 * A stay with the instants it reaches from and to.
 *
 * @param stay stay in a cabinet
 * @param from its beginning
 * @param to its end, or now
 */
record Window(Timeline.Stay stay, Instant from, Instant to) {

    /**
     * The window of a stay. A part fitted by a job begins when that job took the old one out, not at midnight: what
     * happened that day before belongs to the old part.
     */
    static Window of(Timeline.Stay stay, List<Timeline.Stay> inCabinet, ZoneId zone, Instant now) {
        Instant midnight = stay.installedOn() == null
                ? Instant.EPOCH
                : stay.installedOn().atStartOfDay(zone).toInstant();
        Instant from = stay.fittedByJob() == null
                ? midnight
                : inCabinet.stream()
                        .filter(s -> s.positionCode().equals(stay.positionCode())
                                && stay.fittedByJob().equals(s.removedByJob()))
                        .map(Timeline.Stay::removedAt)
                        .filter(t -> stay.removedAt() == null || t.isBefore(stay.removedAt()))
                        .max(Comparator.naturalOrder())
                        .orElse(midnight);
        return new Window(stay, from, stay.removedAt() == null ? now : stay.removedAt());
    }

    boolean covers(Instant at) {
        return !at.isBefore(from) && !at.isAfter(to);
    }

    boolean concerns(String positionCode) {
        return positionCode == null || positionCode.equals(stay.positionCode());
    }
}
