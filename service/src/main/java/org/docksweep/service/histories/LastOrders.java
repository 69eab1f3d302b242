package org.docksweep.service.histories;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.Timeline;
import org.docksweep.fleet.AssetTag;
import org.docksweep.service.returns.Returns;
import org.springframework.stereotype.Component;

/** Who had a cabinet: the order it was out on last. */
@Component
class LastOrders {
    private static final String SENT_OUT = "history-sent-out";

    private final Returns returns;

    LastOrders(Returns returns) {
        this.returns = returns;
    }

    /**
     * The newest of the orders that the history knows and of the return lists the cabinet was on.
     *
     * @param tag cabinet
     * @param events its events
     * @param until instant up to which it counts
     * @return the order, or null when none is on record
     */
    Timeline.LastOrder of(AssetTag tag, List<HistoryEvent> events, Instant until) {
        Stream<Timeline.LastOrder> sentOut = events.stream()
                .filter(e -> e.kind() == HistoryEvent.Kind.SENT_OUT
                        && e.text().key().equals(SENT_OUT)
                        && e.text().arguments().size() == 2)
                .map(e -> new Timeline.LastOrder(
                        e.text().arguments().get(0), e.text().arguments().get(1), e.at()));
        Stream<Timeline.LastOrder> listed = returns.ordersOf(tag).stream()
                .map(o -> new Timeline.LastOrder(o.orderNumber(), o.customer(), o.listedAt()));
        return Stream.concat(sentOut, listed)
                .filter(o -> !o.at().isAfter(until))
                .max(Comparator.comparing(Timeline.LastOrder::at))
                .orElse(null);
    }
}
