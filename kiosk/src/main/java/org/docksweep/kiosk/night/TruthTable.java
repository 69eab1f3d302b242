package org.docksweep.kiosk.night;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.DemoHouse.Arrival;
import org.docksweep.contract.DemoHouse.Kind;
import org.docksweep.contract.DemoHouse.Truth;
import org.docksweep.fleet.Route;
import org.docksweep.judge.Prompt;
import org.docksweep.kiosk.proving.Wilson;
import org.docksweep.suspect.Suspect;

/** What the gate said against what was really there. The truth is read here and nowhere else. */
public final class TruthTable {

    /** How a row came out. */
    public enum Match {
        /** As it should be. */
        RIGHT,
        /** A soft fault that this gate may or may not catch yet, and did not. */
        NOT_CAUGHT_YET,
        /** To the bench as it should be, but no driver position was named: a crossover part, or the terminals. */
        POSITION_NOT_NAMED,
        /** To the bench as it should be, but another position was named. */
        OTHER_POSITION,
        /** Not as it should be. */
        WRONG
    }

    /**
     * One cabinet.
     *
     * @param arrival what came
     * @param modelCode model of its label
     * @param route where it went
     * @param faultPositionCode position named, or null
     * @param prompts what was asked on the way
     * @param match how that compares
     */
    public record Row(
            Arrival arrival,
            String modelCode,
            Route route,
            String faultPositionCode,
            List<Prompt> prompts,
            Match match) {}

    /** Probabilities closer than this are shown as the same whole per cent. */
    private static final double EQUALLY_PROBABLE = 0.005;

    private final List<Row> rows = new ArrayList<>();

    void add(Arrival arrival, CheckInBody checkIn, List<Prompt> prompts) {
        Match match = match(arrival.truth(), checkIn.route(), checkIn.faultPositionCode(), checkIn.suspects(), prompts);
        rows.add(new Row(arrival, checkIn.modelCode(), checkIn.route(), checkIn.faultPositionCode(), prompts, match));
    }

    /**
     * Takes over the rows of another night.
     *
     * @param other the other table
     */
    public void addAll(TruthTable other) {
        rows.addAll(other.rows);
    }

    static Match match(
            Truth truth, Route route, String faultPositionCode, List<Suspect> suspects, List<Prompt> prompts) {
        return switch (truth.kind()) {
            case HEALTHY -> rightIf(route == Route.SHELF);
            case HARD_FAULT ->
                route == Route.BENCH ? atPosition(truth.faultPositionCode(), faultPositionCode, suspects) : Match.WRONG;
            case SOFT_FAULT -> route == Route.SHELF ? Match.NOT_CAUGHT_YET : Match.RIGHT;
            case VISUAL_SAFETY -> rightIf(route == Route.SAFETY_HOLD);
            case WRONG_LABEL -> rightIf(route == Route.MANUAL_HOLD && prompts.contains(Prompt.CHECK_LABEL));
            case NOT_PLUGGED -> rightIf(route == Route.SHELF && prompts.contains(Prompt.PLUG_IN));
        };
    }

    /** Suspects as probable as the first one cannot be told apart from it, and are said together. */
    private static Match atPosition(String truly, String named, List<Suspect> suspects) {
        boolean among = suspects.stream()
                .filter(s -> s.probability() >= suspects.get(0).probability() - EQUALLY_PROBABLE)
                .anyMatch(s -> truly.equals(s.positionCode()));
        if (among || truly.equals(named)) {
            return Match.RIGHT;
        }
        return named == null ? Match.POSITION_NOT_NAMED : Match.OTHER_POSITION;
    }

    private static Match rightIf(boolean right) {
        return right ? Match.RIGHT : Match.WRONG;
    }

    /**
     * All rows.
     *
     * @return rows in the order of arrival
     */
    public List<Row> rows() {
        return List.copyOf(rows);
    }

    /**
     * Whether something went wrong: a hard fault missed, a healthy cabinet not on the shelf, a prompt or a hold not
     * given.
     *
     * @return true if every row is right enough
     */
    public boolean passes() {
        return rows.stream().noneMatch(r -> r.match() == Match.WRONG);
    }

    /**
     * The table of one night.
     *
     * @return lines
     */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(String.format(
                Locale.ROOT,
                "%-11s %-8s %-13s %-12s %-15s %s",
                "label",
                "model",
                "truth",
                "went to",
                "match",
                "what was there"));
        for (Row row : rows) {
            lines.add(String.format(
                    Locale.ROOT,
                    "%-11s %-8s %-13s %-12s %-15s %s",
                    row.arrival().label(),
                    row.modelCode(),
                    word(row.arrival().truth().kind()),
                    word(row.route()) + (row.faultPositionCode() == null ? "" : " " + row.faultPositionCode()),
                    word(row.match()),
                    row.arrival().truth().words()));
        }
        return lines;
    }

    /**
     * Counts per kind of truth, with Wilson limits at 95 %.
     *
     * @return lines
     */
    public List<String> summary() {
        Map<Kind, List<Row>> byKind = new EnumMap<>(Kind.class);
        rows.forEach(r -> byKind.computeIfAbsent(r.arrival().truth().kind(), k -> new ArrayList<>())
                .add(r));
        List<String> lines = new ArrayList<>();
        lines.add(String.format(
                Locale.ROOT,
                "%-13s %7s %7s %7s   %s",
                "truth",
                "count",
                "right",
                "wrong",
                "wrong, 95 % Wilson limits"));
        byKind.forEach((kind, ofKind) -> {
            int wrong = count(ofKind, Match.WRONG);
            Wilson limits = Wilson.of(wrong, ofKind.size());
            lines.add(String.format(
                    Locale.ROOT,
                    "%-13s %7d %7d %7d   %.2f %% to %.2f %%%s%s%s",
                    word(kind),
                    ofKind.size(),
                    count(ofKind, Match.RIGHT),
                    wrong,
                    100 * limits.low(),
                    100 * limits.high(),
                    also(ofKind, Match.POSITION_NOT_NAMED),
                    also(ofKind, Match.OTHER_POSITION),
                    also(ofKind, Match.NOT_CAUGHT_YET)));
        });
        return lines;
    }

    private static String also(List<Row> rows, Match match) {
        int count = count(rows, match);
        return count == 0 ? "" : "; " + count + " " + word(match);
    }

    private static int count(List<Row> rows, Match match) {
        return (int) rows.stream().filter(r -> r.match() == match).count();
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
