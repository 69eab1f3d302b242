package org.docksweep.service.trends;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import org.docksweep.survival.HealthySpread;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Component;

/** How much healthy units of a kind scatter from return to return, learned from the newest readings; kept for a day. */
@Component
class Spreads {
    private static final int NEWEST = 2_000;
    private static final int FEWEST_UNITS = 3;
    private static final Duration KEPT = Duration.ofDays(1);

    private final TrendReadings readings;
    private final Clock clock;
    private final Map<Quantity, Known> known = new ConcurrentHashMap<>();

    private record Known(double spread, Instant at) {}

    Spreads(TrendReadings readings, Clock clock) {
        this.readings = readings;
        this.clock = clock;
    }

    double of(Quantity quantity) {
        Instant now = clock.instant();
        Known before = known.get(quantity);
        if (before != null && !before.at().plus(KEPT).isBefore(now)) {
            return before.spread();
        }
        double spread = learned(quantity);
        known.put(quantity, new Known(spread, now));
        return spread;
    }

    private double learned(Quantity quantity) {
        Quantity.Followed followed = quantity.followed();
        Map<String, List<Double>> series = new TreeMap<>();
        readings.newest(
                        quantity.modelCode(),
                        quantity.testPointCode(),
                        quantity.owner(),
                        quantity.kind(),
                        Limit.of(NEWEST))
                .forEach(r -> series.computeIfAbsent(r.tag(), t -> new ArrayList<>())
                        .add(followed.scaled(r.point().value())));
        if (series.size() < FEWEST_UNITS) {
            // A single unit on its way out would be measured by itself.
            return followed.usualSpread();
        }
        series.values().forEach(Collections::reverse);
        return HealthySpread.of(List.copyOf(series.values()), followed.usualSpread());
    }
}
