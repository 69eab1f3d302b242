package org.docksweep.service.trends;

import java.util.List;
import java.util.Locale;
import org.docksweep.contract.DriftRow;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;
import org.docksweep.survival.Trend;

/** Reads a trend and says it. */
final class TrendWords {
    private TrendWords() {}

    static DriftRow row(AssetTag tag, Quantity quantity, List<DriftRow.Point> points, double spread) {
        Quantity.Followed followed = quantity.followed();
        Trend trend =
                Trend.of(points.stream().map(p -> followed.scaled(p.value())).toList(), followed.rule(spread));
        double change = followed.asRatio() ? Math.expm1(trend.change()) : trend.change();
        List<DriftRow.Point> shown =
                points.subList(Math.max(0, points.size() - DriftWarning.MOST_POINTS), points.size());
        return new DriftRow(
                tag,
                quantity.modelCode(),
                null,
                quantity.testPointCode(),
                quantity.owner().isEmpty() ? null : quantity.owner(),
                quantity.kind(),
                trend.state(),
                trend.returns(),
                change,
                Math.abs(trend.change()) / followed.concern(),
                followed.unscaled(trend.start()),
                followed.unscaled(trend.limits().lower()),
                followed.unscaled(trend.limits().upper()),
                List.copyOf(shown),
                words(tag, quantity, trend, change));
    }

    private static Reason words(AssetTag tag, Quantity quantity, Trend trend, double change) {
        return switch (trend.state()) {
            case TOO_FEW -> Reason.of("trend-too-few");
            case STEADY -> Reason.of("trend-steady");
            case FALLING, RISING ->
                Reason.of(
                        "trend-" + lower(quantity.followed()) + "-" + lower(trend.state()),
                        quantity.owner().isEmpty() ? quantity.testPointCode() : quantity.owner(),
                        tag.value(),
                        amount(quantity.followed(), change),
                        Integer.toString(trend.returns()));
        };
    }

    private static String lower(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT);
    }

    private static String amount(Quantity.Followed followed, double change) {
        return followed.asRatio()
                ? String.format(Locale.ROOT, "%.0f %%", 100 * Math.abs(change))
                : String.format(Locale.ROOT, "%.1f dB", Math.abs(change));
    }
}
