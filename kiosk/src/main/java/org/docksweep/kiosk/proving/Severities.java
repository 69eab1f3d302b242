package org.docksweep.kiosk.proving;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.docksweep.contract.ProvingFaultKind;

/**
 * At which severity a soft fault is promised to be found. Parts off their value are drawn above and below it alike.
 *
 * @param withBaseline severities by kind when the cabinet's own baseline is known
 * @param withReference severities by kind when only the model's reference is known
 */
public record Severities(Map<ProvingFaultKind, Double> withBaseline, Map<ProvingFaultKind, Double> withReference) {
    /** First line of the file form. */
    static final String HEADER = "kind,with_baseline,with_reference";

    public Severities {
        withBaseline = Map.copyOf(withBaseline);
        withReference = Map.copyOf(withReference);
    }

    /**
     * The severities of the product's own promise.
     *
     * @return the table
     */
    public static Severities promised() {
        Map<ProvingFaultKind, Double> own = new EnumMap<>(ProvingFaultKind.class);
        Map<ProvingFaultKind, Double> model = new EnumMap<>(ProvingFaultKind.class);
        put(own, model, ProvingFaultKind.CONTACT_RESISTANCE, 0.10, 0.25);
        put(own, model, ProvingFaultKind.SHORTED_TURNS, 0.05, 0.10);
        put(own, model, ProvingFaultKind.PART_OFF_VALUE, 0.15, 0.35);
        put(own, model, ProvingFaultKind.LEAK, 0.5, 0.5);
        put(own, model, ProvingFaultKind.PORT_BLOCKED, 0, 0);
        put(own, model, ProvingFaultKind.WAY_WEAK, 3, 6);
        put(own, model, ProvingFaultKind.POLARITY, 0, 0);
        put(own, model, ProvingFaultKind.RUB, -40, -40);
        put(own, model, ProvingFaultKind.MAGNET_WEAK, 0.10, 0.10);
        return new Severities(own, model);
    }

    private static void put(
            Map<ProvingFaultKind, Double> own,
            Map<ProvingFaultKind, Double> model,
            ProvingFaultKind kind,
            double withBaseline,
            double withReference) {
        own.put(kind, withBaseline);
        model.put(kind, withReference);
    }

    /**
     * Reads the file form: the header, then one line per kind. Kinds left out keep the promised severity.
     *
     * @param name name of the file, for errors
     * @param lines its lines
     * @return the table
     * @throws IllegalArgumentException if a line cannot be understood; names it
     */
    public static Severities parse(String name, List<String> lines) {
        if (lines.isEmpty() || !lines.get(0).strip().equals(HEADER)) {
            throw new IllegalArgumentException(name + ", line 1: must be " + HEADER);
        }
        Map<ProvingFaultKind, Double> own = new EnumMap<>(promised().withBaseline());
        Map<ProvingFaultKind, Double> model = new EnumMap<>(promised().withReference());
        for (int n = 1; n < lines.size(); n++) {
            if (lines.get(n).isBlank()) {
                continue;
            }
            String[] cells = lines.get(n).split(",", -1);
            String where = name + ", line " + (n + 1) + ": ";
            if (cells.length != 3) {
                throw new IllegalArgumentException(where + "must have 3 cells, but has " + cells.length);
            }
            ProvingFaultKind kind = kind(where, cells[0].strip());
            own.put(kind, number(where, cells[1]));
            model.put(kind, number(where, cells[2]));
        }
        return new Severities(own, model);
    }

    private static ProvingFaultKind kind(String where, String text) {
        for (ProvingFaultKind kind : promised().withBaseline().keySet()) {
            if (kind.name().equals(text.toUpperCase(Locale.ROOT))) {
                return kind;
            }
        }
        throw new IllegalArgumentException(where + "\"" + text + "\" is not a soft fault; expected one of "
                + new java.util.TreeSet<>(promised().withBaseline().keySet()));
    }

    private static double number(String where, String text) {
        try {
            return Double.parseDouble(text.strip());
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(where + "\"" + text + "\" is not a number", e);
        }
    }

    double of(ProvingFaultKind kind, Knowing knowing) {
        Double severity = (knowing == Knowing.BASELINE ? withBaseline : withReference).get(kind);
        if (severity == null) {
            throw new IllegalArgumentException(kind + " has no severity");
        }
        return severity;
    }
}
