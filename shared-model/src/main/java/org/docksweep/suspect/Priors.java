package org.docksweep.suspect;

import java.util.List;
import java.util.Locale;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Require;

/**
 * What a house has learned from its own repairs: by which factors the usual prior weights are to be multiplied, and what
 * was behind a fault. Part of everything a judgement depends on, so an old recording is judged again with the priors of
 * its day.
 *
 * @param findings confirmed causes that went in; 0 for the usual weights
 * @param factors factors; what is not listed keeps its usual weight
 * @param lookFirst what the bench found most behind a fault, where it is clear
 */
public record Priors(int findings, List<Factor> factors, List<LookFirst> lookFirst) {
    /** Nothing learned: the usual weights. */
    public static final Priors USUAL = new Priors(0, List.of(), List.of());

    /**
     * Factor of one fault at one kind of place.
     *
     * @param ownerCode driver model; cabinet model where a crossover part or a box is concerned
     * @param elementId crossover part or box, or null for a driver
     * @param kind fault
     * @param factor learned weight over usual weight, greater than 0
     */
    public record Factor(String ownerCode, String elementId, FaultKind kind, double factor) {
        public Factor {
            Require.text("owner of a prior factor", ownerCode);
            if (kind == null) {
                throw new IllegalArgumentException("prior factor of " + ownerCode + ": the fault is missing");
            }
            Require.positive("prior factor of " + kind + " of " + ownerCode, factor);
        }

        boolean isFor(String owner, String element, FaultKind fault) {
            return kind == fault && ownerCode.equals(owner) && java.util.Objects.equals(elementId, element);
        }
    }

    /**
     * What was mostly behind a fault of a driver model.
     *
     * @param driverModelCode driver model
     * @param kind fault as the dock sees it
     * @param cause what the bench found
     * @param found how many repairs found it
     * @param of how many repairs of this fault there were
     */
    public record LookFirst(String driverModelCode, FaultKind kind, ConfirmedCause cause, int found, int of) {}

    public Priors {
        Require.notNegative("findings behind the priors", findings);
        factors = Require.copy("prior factors", factors);
        lookFirst = Require.copy("what to look at first", lookFirst);
    }

    /** The hypotheses of a point of a model with their weights as learned. */
    List<Hypothesis> applied(CabinetModel model, List<Hypothesis> hypotheses) {
        if (factors.isEmpty()) {
            return hypotheses;
        }
        return hypotheses.stream()
                .map(h -> h.kind() == null ? h : withWeight(h, h.weight() * factor(model, h)))
                .toList();
    }

    private static Hypothesis withWeight(Hypothesis h, double weight) {
        return new Hypothesis(
                h.kind(),
                h.positionCode(),
                h.elementId(),
                h.structure(),
                h.widenedParameter(),
                h.shift(),
                h.spread(),
                weight);
    }

    private double factor(CabinetModel model, Hypothesis hypothesis) {
        String owner = owner(model, hypothesis);
        return factors.stream()
                .filter(f -> f.isFor(owner, hypothesis.elementId(), hypothesis.kind()))
                .mapToDouble(Factor::factor)
                .findFirst()
                .orElse(1);
    }

    static String owner(CabinetModel model, Hypothesis hypothesis) {
        return hypothesis.positionCode() == null
                ? model.code()
                : model.position(hypothesis.positionCode()).driverModelCode();
    }

    /** The suspect with what the house's own repairs say to look at first, where they have a clear answer. */
    Suspect informed(CabinetModel model, Suspect suspect) {
        if (suspect.positionCode() == null || suspect.elementId() != null) {
            return suspect;
        }
        String driver = model.position(suspect.positionCode()).driverModelCode();
        return lookFirst.stream()
                .filter(l -> l.kind() == suspect.kind() && l.driverModelCode().equals(driver))
                .findFirst()
                .map(l -> suspect.withNextStep(Reason.of(
                        "next-learned",
                        suspect.positionCode(),
                        "@learned-" + l.cause().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                        Integer.toString(l.found()),
                        Integer.toString(l.of()))))
                .orElse(suspect);
    }
}
