package org.docksweep.gate;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * How far healthy units vary, learned from all references of a house together. A handful of units of one model says little of any
 * single spread, and most tolerances are common practice without a source; but coils, capacitors and suspensions of other models
 * vary much alike.
 *
 * <p>The variance of a parameter is {@code rho} times the one expected. What a reference's units show of it depends on what is believed of all others, so
 * rho is found in rounds: units deviate by {@code e} under the belief, which shows {@code gamma} of a variance ({@link UnitDeviations}), and the next
 * {@code rho = (w belief + sum e^2) / (w + sum gamma)} (MacKay's rule, Neural Computation 4, 1992, with a belief besides; from memory). Sums and
 * beliefs go from the many to the one: a trade (crossover parts; drivers and boxes; plug and temperature), a quantity of it in the whole house (all
 * resistances of coils), how tight the makers of this reference are, the parameter itself. So a house whose makers differ learns that as well.
 */
public final class SharedScatter {
    /** Units below this number say nothing of a scatter. */
    static final int LEAST_UNITS = 3;
    /** Weight of the belief that a trade varies as the tolerances say, in degrees of freedom. */
    private static final double TRADE_WEIGHT = 20;
    /** Weight of the belief that a quantity varies as its trade does. */
    private static final double QUANTITY_WEIGHT = 10;
    /** Weight of the belief that the makers of a reference are as tight as others. */
    private static final double MAKER_WEIGHT = 8;
    /** Weight of the belief that a parameter varies as its quantity does. */
    private static final double PARAMETER_WEIGHT = 15;
    /** No parameter says more of others than so many times what is believed: a bad unit among the good is not production. */
    private static final double MOST_RATIO = 6;

    private static final double LEAST_RHO = 0.003;
    private static final int ROUNDS = 12;

    private final List<Member> members = new ArrayList<>();
    private final Map<String, Sum> trades = new HashMap<>();
    private final Map<String, Sum> quantities = new HashMap<>();

    /** What was seen, summed. */
    private static final class Sum {
        private double squares;
        private double freedom;

        void add(double moreSquares, double moreFreedom) {
            squares += moreSquares;
            freedom += moreFreedom;
        }

        double ratio(double weight, double belief) {
            return (weight * belief + squares) / (weight + freedom);
        }
    }

    /** One reference on its way. */
    private static final class Member {
        private final String[] quantity;
        private final UnitDeviations deviations;
        private final double[] rho;
        private final Map<String, Sum> makers = new HashMap<>();
        private UnitDeviations.Seen seen;

        Member(PointReference.Taught taught, int units) {
            this.quantity =
                    taught.parameterIds().stream().map(SharedScatter::quantity).toArray(String[]::new);
            this.deviations = units < LEAST_UNITS ? null : new UnitDeviations(taught.scatter());
            this.rho = new double[quantity.length];
            java.util.Arrays.fill(rho, 1);
        }

        /** What is believed of one parameter in the end, its own units included. */
        double rho(int p) {
            Sum own = new Sum();
            if (seen != null) {
                own.add(seen.squares()[p], seen.freedom()[p]);
            }
            double freedom = PARAMETER_WEIGHT + own.freedom;
            return own.ratio(PARAMETER_WEIGHT, rho[p]) * freedom / (freedom - 2);
        }

        double maker(String trade) {
            return makers.getOrDefault(trade, new Sum()).ratio(MAKER_WEIGHT, 1);
        }
    }

    private SharedScatter() {}

    /**
     * References whose spreads hold what all of them together say.
     *
     * @param references references of a house; those taught before scatter was kept come back as they are
     * @return as many, in the same order; the same again when applied to the outcome
     */
    public static List<PointReference> over(List<PointReference> references) {
        SharedScatter shared = new SharedScatter();
        for (PointReference reference : references) {
            if (tells(reference)) {
                shared.members.add(new Member(reference.taught(), reference.unitCount()));
            }
        }
        shared.learn();
        List<PointReference> refreshed = new ArrayList<>();
        int next = 0;
        for (PointReference reference : references) {
            refreshed.add(
                    tells(reference)
                            ? reference.withSpread(
                                    spreads(shared.members.get(next++), reference.taught(), reference.unitCount()))
                            : reference);
        }
        return List.copyOf(refreshed);
    }

    private static boolean tells(PointReference reference) {
        return reference.taught() != null && reference.taught().scatter() != null;
    }

    /** Spreads by the units of one reference alone, while its house has no other. */
    static double[] alone(PointReference.Taught taught, int units) {
        SharedScatter shared = new SharedScatter();
        shared.members.add(new Member(taught, units));
        shared.learn();
        return spreads(shared.members.get(0), taught, units);
    }

    private static double[] spreads(Member member, PointReference.Taught taught, int units) {
        double[] spread = taught.scatter().tolerance().clone();
        for (int p = 0; p < spread.length; p++) {
            if (Drift.belongsToTheCabinet(taught.parameterIds().get(p))) {
                // the mean of few units is unsure itself
                spread[p] *= Math.sqrt(member.rho(p) * (1 + 1.0 / (units + 1)));
            }
        }
        return spread;
    }

    private void learn() {
        for (int round = 0; round < ROUNDS; round++) {
            for (Member member : members) {
                member.seen = member.deviations == null ? null : member.deviations.under(member.rho);
            }
            sum();
            members.forEach(this::believe);
        }
    }

    private void sum() {
        trades.clear();
        quantities.clear();
        for (Member member : members) {
            if (member.seen == null) {
                continue;
            }
            Map<String, Sum> makers = new HashMap<>();
            for (int p = 0; p < member.quantity.length; p++) {
                String quantity = member.quantity[p];
                String trade = trade(quantity);
                double freedom = member.seen.freedom()[p];
                double squares = Math.min(member.seen.squares()[p], MOST_RATIO * freedom * member.rho[p]);
                double maker = member.maker(trade);
                trades.computeIfAbsent(trade, t -> new Sum()).add(squares / maker, freedom);
                quantities.computeIfAbsent(quantity, q -> new Sum()).add(squares / maker, freedom);
                makers.computeIfAbsent(trade, t -> new Sum()).add(squares * maker / member.rho[p], freedom);
            }
            member.makers.putAll(makers);
        }
    }

    private void believe(Member member) {
        for (int p = 0; p < member.rho.length; p++) {
            String trade = trade(member.quantity[p]);
            double ofTrade = trades.getOrDefault(trade, new Sum()).ratio(TRADE_WEIGHT, 1);
            double ofQuantity =
                    quantities.getOrDefault(member.quantity[p], new Sum()).ratio(QUANTITY_WEIGHT, ofTrade);
            member.rho[p] = Math.max(LEAST_RHO, ofQuantity * member.maker(trade));
        }
    }

    /** Crossover parts come from other makers than drivers and boxes. */
    private static String trade(String quantity) {
        return switch (quantity) {
            case "value", "winding", "esrOhm" -> "parts";
            case "contact", "temperature", "climate" -> "moment";
            default -> "drivers and boxes";
        };
    }

    /** The first resonance of a horn driver is its diaphragm's own; the others are the horn's and of one kind, f, Q and Z each. */
    private static String quantity(String parameterId) {
        String quantity = parameterId.substring(parameterId.lastIndexOf('.') + 1);
        boolean ofTheHorn = quantity.length() >= 2
                && "fQZ".indexOf(quantity.charAt(0)) >= 0
                && Character.isDigit(quantity.charAt(1))
                && !quantity.substring(1).equals("1");
        return ofTheHorn ? quantity.charAt(0) + "k" : quantity;
    }
}
