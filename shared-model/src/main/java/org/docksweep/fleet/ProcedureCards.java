package org.docksweep.fleet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * Makes procedure cards: the generic steps of a purpose, with the numbers of a driver model put in where they belong. All
 * steps and cautions are common practice, no source; the numbers are the house's own data.
 */
public final class ProcedureCards {
    private ProcedureCards() {}

    /**
     * The generic card of a purpose; it has no numbers.
     *
     * @param purpose purpose
     * @return the card
     */
    public static ProcedureCard generic(ProcedurePurpose purpose) {
        return new ProcedureCard(
                purpose,
                null,
                GenericProcedures.effortMinutes(purpose),
                renewsMovingPart(purpose),
                GenericProcedures.steps(purpose).stream()
                        .map(s -> new ProcedureCard.Step(s.code(), s.text(), List.of(), null, s.cautions()))
                        .toList());
    }

    /**
     * The card of a purpose for a driver model.
     *
     * @param purpose purpose
     * @param driver driver model
     * @param data numbers of this driver model, or null when none are on record: then the card says which to find out
     * @return the card
     */
    public static ProcedureCard of(ProcedurePurpose purpose, DriverModel driver, DriverBenchData data) {
        List<ProcedureCard.Step> steps = new ArrayList<>();
        for (GenericProcedures.Step step : GenericProcedures.steps(purpose)) {
            List<Reason> numbers = step.needs().stream()
                    .map(n -> number(n, driver, data))
                    .filter(Objects::nonNull)
                    .toList();
            String note = data == null ? null : data.notes().get(step.code());
            steps.add(new ProcedureCard.Step(step.code(), step.text(), numbers, note, step.cautions()));
        }
        int generic = GenericProcedures.effortMinutes(purpose);
        return new ProcedureCard(
                purpose,
                driver.code(),
                data == null ? generic : data.effortMinutes().getOrDefault(purpose, generic),
                renewsMovingPart(purpose),
                steps);
    }

    /** After these the polarity must be proved. */
    private static boolean renewsMovingPart(ProcedurePurpose purpose) {
        return switch (purpose) {
            case DIAPHRAGM_REPLACEMENT, RECONE, DRIVER_SWAP -> true;
            case CROSSOVER_PART, CONNECTOR, AIR_TIGHTNESS -> false;
        };
    }

    private static Reason number(GenericProcedures.Number number, DriverModel driver, DriverBenchData data) {
        return switch (number) {
            case POLARITY ->
                driver.polarityMark() == null
                        ? Reason.of("bench-number-polarity-unknown")
                        : Reason.of("bench-number-polarity", driver.polarityMark());
            case POLARITY_AFTER ->
                driver.polarityMark() == null
                        ? Reason.of("bench-number-polarity-own-mark")
                        : Reason.of("bench-number-polarity", driver.polarityMark());
            case RESISTANCE ->
                Reason.of(
                        "bench-number-resistance", plain(driver.dcResistanceOhm()), plain(driver.ratedImpedanceOhm()));
            case PARTS ->
                driver.diaphragmPartNumbers().isEmpty()
                        ? null
                        : Reason.of("bench-number-parts", String.join(", ", driver.diaphragmPartNumbers()));
            case FASTENERS, TIGHTENING -> fasteners(number, driver, data);
            case LOCATING ->
                data == null || data.locatingFeatures() == null
                        ? missing("bench-word-locating", driver)
                        : Reason.of("bench-number-locating", data.locatingFeatures());
            case GAP -> gap(driver, data);
            case TOOLS ->
                data == null || data.tools().isEmpty()
                        ? null
                        : Reason.of("bench-number-tools", String.join(", ", data.tools()));
        };
    }

    private static Reason fasteners(GenericProcedures.Number number, DriverModel driver, DriverBenchData data) {
        DriverBenchData.Fasteners fasteners = data == null ? null : data.fasteners();
        if (fasteners == null) {
            return missing("bench-word-fasteners", driver);
        }
        return number == GenericProcedures.Number.FASTENERS
                ? Reason.of(
                        "bench-number-fasteners",
                        Integer.toString(fasteners.count()),
                        fasteners.thread(),
                        fasteners.drive())
                : Reason.of("bench-number-tightening", plain(fasteners.tighteningNm()), fasteners.order());
    }

    private static Reason gap(DriverModel driver, DriverBenchData data) {
        if (data == null || data.gap() == null) {
            return missing("bench-word-gap", driver);
        }
        DriverBenchData.Gap gap = data.gap();
        return gap.fluidPartNumber() == null
                ? Reason.of("bench-number-gap-dry")
                : Reason.of("bench-number-gap-fluid", plain(gap.fluidMicrolitre()), gap.fluidPartNumber());
    }

    private static Reason missing(String word, DriverModel driver) {
        return Reason.of("bench-number-missing", "@" + word, driver.code());
    }

    private static String plain(double value) {
        return String.format(Locale.ROOT, "%.2f", value).replaceAll("\\.?0+$", "");
    }
}
