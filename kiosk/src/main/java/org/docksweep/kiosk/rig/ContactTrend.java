package org.docksweep.kiosk.rig;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.docksweep.fleet.Reason;

/**
 * Contact resistance of one pair of contacts of the dock's plug since the last calibration, reading by reading. A plug
 * that wears reads higher from week to week.
 *
 * @param contacts pair of contacts
 * @param at times
 * @param ohms readings in ohm
 */
public record ContactTrend(String contacts, List<Instant> at, List<Double> ohms) {
    /** Readings that say how the plug was when it was new. */
    private static final int FIRST = 3;

    /** Readings that say how it is now: a single bad one may be dirt. */
    private static final int LAST = 3;

    /** Half of what 0.5 % of 8 ohm would bear. */
    static final double WORN_OHM = 0.020;

    public ContactTrend {
        at = List.copyOf(at);
        ohms = List.copyOf(ohms);
    }

    /**
     * Trends of a book.
     *
     * @param book the book
     * @return one per pair of contacts measured since the last calibration
     */
    public static List<ContactTrend> of(RigBook book) {
        Map<String, List<RigEntry.Contact>> byPair = new LinkedHashMap<>();
        for (RigEntry entry : book.entries()) {
            if (entry instanceof RigEntry.Calibrated) {
                // A calibration counts the plug as it is then.
                byPair.clear();
            } else if (entry instanceof RigEntry.Contact contact) {
                byPair.computeIfAbsent(contact.contacts(), c -> new ArrayList<>())
                        .add(contact);
            }
        }
        return byPair.entrySet().stream()
                .map(e -> new ContactTrend(
                        e.getKey(),
                        e.getValue().stream().map(RigEntry.Contact::at).toList(),
                        e.getValue().stream().map(RigEntry.Contact::ohm).toList()))
                .toList();
    }

    /**
     * How much higher it reads now than at first: median of the last three over the median of the first three.
     *
     * @return in ohm; 0 with fewer than four readings
     */
    public double riseOhm() {
        int n = ohms.size();
        return n <= FIRST ? 0 : median(ohms.subList(n - LAST, n)) - median(ohms.subList(0, FIRST));
    }

    /**
     * Whether the plug is worn.
     *
     * @return true from 20 milliohm of rise on
     */
    public boolean worn() {
        return riseOhm() >= WORN_OHM;
    }

    /**
     * The trend in words.
     *
     * @return a sentence
     */
    public Reason words() {
        String now = milliohm(ohms.get(ohms.size() - 1));
        return worn()
                ? Reason.of("rigpage-contact-worn", contacts, milliohm(riseOhm()), now)
                : Reason.of("rigpage-contact-steady", contacts, now);
    }

    private static String milliohm(double ohm) {
        return String.format(Locale.ROOT, "%.0f", 1000 * ohm);
    }

    private static double median(List<Double> values) {
        return values.stream().sorted().toList().get(values.size() / 2);
    }
}
