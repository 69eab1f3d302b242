package org.docksweep.kiosk.rig;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;

/**
 * Contact of one pair of contacts of the dock's plug, plug-in by plug-in since the calibration, as the curves of cabinets told
 * it. The median over the last {@value #LAST} cabinets is held against that over the first {@value #LAST} to {@value #FIRST}. In each
 * of the two a cabinet counts once, so that one bad socket, however often it comes, is one value of many.
 *
 * <p>Standard uncertainty of a median {@code 1.2533 s / sqrt(n)} (normal values; from memory), s by the median deviation of both
 * ({@code 1.4826 MAD}).
 *
 * @param contacts pair of contacts
 * @param plugIns plug-ins, oldest first
 */
public record PlugTrend(String contacts, List<RigEntry.PlugIn> plugIns) {
    /** Cabinets that say how the plug is now. */
    public static final int LAST = 12;

    /** Cabinets, at most, that say how it was after the calibration. */
    public static final int FIRST = 30;

    /** A rise is seen from so many of its standard uncertainties. */
    private static final double CLEARLY = 3;

    private static final double OF_A_MEDIAN = 1.2533;
    private static final double OF_DEVIATIONS = 1.4826;

    public PlugTrend {
        plugIns = List.copyOf(plugIns);
    }

    /**
     * A rise of the contact.
     *
     * @param ohm median now less median after the calibration, in ohm
     * @param standardUncertaintyOhm its standard uncertainty, in ohm
     */
    public record Rise(double ohm, double standardUncertaintyOhm) {}

    /**
     * Trends of a book.
     *
     * @param book the book
     * @return one per pair of contacts since the last calibration
     */
    public static List<PlugTrend> of(RigBook book) {
        Map<String, List<RigEntry.PlugIn>> byPair = new LinkedHashMap<>();
        for (RigEntry entry : book.entries()) {
            if (entry instanceof RigEntry.Calibrated) {
                // A calibration counts the plug as it is then.
                byPair.clear();
            } else if (entry instanceof RigEntry.PlugIn plugIn) {
                byPair.computeIfAbsent(plugIn.contacts(), c -> new ArrayList<>())
                        .add(plugIn);
            }
        }
        return byPair.entrySet().stream()
                .map(e -> new PlugTrend(e.getKey(), e.getValue()))
                .toList();
    }

    /**
     * How much higher the plug reads now than after the calibration.
     *
     * @return the rise; 0 with an infinite uncertainty while there are too few cabinets
     */
    public Rise rise() {
        List<Double> last = new ArrayList<>();
        Set<AssetTag> seen = new HashSet<>();
        int from = plugIns.size();
        while (from > 0 && last.size() < LAST) {
            from--;
            if (seen.add(plugIns.get(from).tag())) {
                last.add(plugIns.get(from).ohm());
            }
        }
        List<Double> first = new ArrayList<>();
        seen.clear();
        for (int i = 0; i < from && first.size() < FIRST; i++) {
            if (seen.add(plugIns.get(i).tag())) {
                first.add(plugIns.get(i).ohm());
            }
        }
        if (first.size() < LAST) {
            return new Rise(0, Double.POSITIVE_INFINITY);
        }
        double before = median(first);
        double now = median(last);
        List<Double> deviations = new ArrayList<>();
        first.forEach(ohm -> deviations.add(Math.abs(ohm - before)));
        last.forEach(ohm -> deviations.add(Math.abs(ohm - now)));
        double spread = OF_DEVIATIONS * median(deviations);
        return new Rise(now - before, OF_A_MEDIAN * spread * Math.sqrt(1.0 / first.size() + 1.0 / last.size()));
    }

    /**
     * Whether the plug is worn: the rise is at least what counts as wear of the short plug's reading, and clear of its scatter.
     *
     * @return true if so
     */
    public boolean worn() {
        Rise rise = rise();
        return rise.ohm() >= ContactTrend.WORN_OHM && rise.ohm() >= CLEARLY * rise.standardUncertaintyOhm();
    }

    /**
     * The trend in words.
     *
     * @return a sentence
     */
    public Reason words() {
        Rise rise = rise();
        if (Double.isInfinite(rise.standardUncertaintyOhm())) {
            return Reason.of("rigpage-plug-few", Integer.toString(plugIns.size()), Integer.toString(2 * LAST));
        }
        return Reason.of(
                worn() ? "rigpage-plug-worn" : "rigpage-plug-steady",
                contacts,
                milliohm(rise.ohm()),
                milliohm(rise.standardUncertaintyOhm()));
    }

    private static String milliohm(double ohm) {
        return String.format(Locale.ROOT, "%.0f", 1000 * ohm);
    }

    private static double median(List<Double> values) {
        List<Double> sorted = values.stream().sorted().toList();
        int n = sorted.size();
        return n % 2 == 1 ? sorted.get(n / 2) : (sorted.get(n / 2 - 1) + sorted.get(n / 2)) / 2;
    }
}
