package org.docksweep.fleet;

import java.util.List;

/**
 * A part of the catalogue.
 *
 * @param number part number, unique in the catalogue
 * @param name name in words
 * @param kind what it is
 * @param source original or aftermarket
 * @param fitsDriverModels driver models it fits; of a whole driver the one model it is
 * @param fitsCabinetModels cabinet models it fits, for parts that belong to no driver; empty when it fits any
 * @param ratedImpedanceOhm rated impedance in ohm of parts with a voice coil, or null for others
 * @param element electrical value of a crossover part, or null for others
 * @param serialised whether every piece carries a serial
 * @param reorderLevel order when so many or fewer are in stock, at least 0
 * @param reorderQuantity least quantity to order at once, at least 1
 * @param unitCostCents cost of one piece in hundredths of the house's currency, or null when not known
 */
public record Part(
        String number,
        String name,
        PartKind kind,
        PartSource source,
        List<String> fitsDriverModels,
        List<String> fitsCabinetModels,
        Double ratedImpedanceOhm,
        Element element,
        boolean serialised,
        int reorderLevel,
        int reorderQuantity,
        Integer unitCostCents) {

    /** What a crossover part does. */
    public enum ElementKind {
        /** Value in farad. */
        CAPACITOR,
        /** Value in henry. */
        INDUCTOR,
        /** Value in ohm. */
        RESISTOR
    }

    /**
     * Electrical value of a crossover part.
     *
     * @param kind what it does
     * @param value value in farad, henry or ohm, greater than 0
     * @param rating rating in words, for example {@code 250 V}
     */
    public record Element(ElementKind kind, double value, String rating) {
        public Element {
            if (kind == null) {
                throw new IllegalArgumentException("element: kind must be CAPACITOR, INDUCTOR or RESISTOR");
            }
            Require.positive("element value", value);
            Require.text("element rating", rating);
        }
    }

    public Part {
        Require.text("part number", number);
        Require.text("part " + number + " name", name);
        if (kind == null) {
            throw new IllegalArgumentException("part " + number + ": kind is missing");
        }
        if (source == null) {
            throw new IllegalArgumentException("part " + number + ": source must be ORIGINAL or AFTERMARKET");
        }
        fitsDriverModels = Require.copy("part " + number + " fitsDriverModels", fitsDriverModels);
        fitsCabinetModels = Require.copy("part " + number + " fitsCabinetModels", fitsCabinetModels);
        if (kind.renewsMovingPart()) {
            Require.notEmpty("part " + number + " fitsDriverModels", fitsDriverModels);
            Require.positive(
                    "part " + number + " ratedImpedanceOhm",
                    ratedImpedanceOhm == null ? Double.NaN : ratedImpedanceOhm);
        }
        if (kind == PartKind.DRIVER_UNIT && fitsDriverModels.size() != 1) {
            throw new IllegalArgumentException("part " + number
                    + ": a whole driver is of exactly one driver model, but " + fitsDriverModels + " are given");
        }
        if ((kind == PartKind.CROSSOVER_PART) != (element != null)) {
            throw new IllegalArgumentException(
                    "part " + number + ": element must be given exactly for a CROSSOVER_PART; the kind is " + kind);
        }
        Require.inRange("part " + number + " reorderLevel", reorderLevel, 0, 1_000_000);
        Require.inRange("part " + number + " reorderQuantity", reorderQuantity, 1, 1_000_000);
        if (unitCostCents != null) {
            Require.notNegative("part " + number + " unitCostCents", unitCostCents);
        }
    }
}
