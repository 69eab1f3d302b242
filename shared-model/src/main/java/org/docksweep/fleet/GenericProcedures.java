package org.docksweep.fleet;

import java.util.Arrays;
import java.util.List;

/** The steps every driver has in common, purpose by purpose. Common practice, no source. */
final class GenericProcedures {
    /** A number of the driver model that a step needs. */
    enum Number {
        POLARITY,
        /** The same, once the part is in. */
        POLARITY_AFTER,
        RESISTANCE,
        PARTS,
        FASTENERS,
        TIGHTENING,
        LOCATING,
        GAP,
        TOOLS
    }

    private static final String MAGNET = "bench-caution-magnet";
    private static final String LIFT = "bench-caution-lift";
    private static final String MAINS = "bench-caution-mains";
    private static final String EARS = "bench-caution-ears";
    private static final String AIR = "bench-caution-air";
    private static final String RIGGING = "bench-caution-rigging";

    private static final Step UNPLUG = step("unplug").caution(MAINS, LIFT);
    private static final Step MARK = step("mark").needs(Number.POLARITY);
    private static final Step CONFIRM = step("confirm").needs(Number.RESISTANCE);
    private static final Step CLEAN_GAP = step("clean-gap").needs(Number.GAP).caution(MAGNET);
    private static final Step PROVE = step("prove").caution(EARS);
    private static final Step PROVE_POLARITY = step("prove-polarity").needs(Number.POLARITY_AFTER);

    /**
     * A step.
     *
     * @param code code, the same on every card it stands on
     * @param needs numbers of the driver model it needs
     * @param cautions cautions that apply at it
     */
    record Step(String code, List<Number> needs, List<Reason> cautions) {
        Reason text() {
            return Reason.of("procedure-" + code);
        }

        Step needs(Number... numbers) {
            return new Step(code, List.of(numbers), cautions);
        }

        Step caution(String... keys) {
            return new Step(code, needs, Arrays.stream(keys).map(Reason::of).toList());
        }
    }

    private GenericProcedures() {}

    private static Step step(String code) {
        return new Step(code, List.of(), List.of());
    }

    /** Usual effort in minutes when nothing better is known; common practice, no source. */
    static int effortMinutes(ProcedurePurpose purpose) {
        return switch (purpose) {
            case DIAPHRAGM_REPLACEMENT, CROSSOVER_PART -> 45;
            case RECONE -> 120;
            case DRIVER_SWAP, AIR_TIGHTNESS -> 30;
            case CONNECTOR -> 20;
        };
    }

    static List<Step> steps(ProcedurePurpose purpose) {
        return switch (purpose) {
            case DIAPHRAGM_REPLACEMENT ->
                List.of(
                        UNPLUG,
                        step("take-off-horn").caution(LIFT, MAGNET),
                        MARK,
                        CONFIRM,
                        step("take-out-diaphragm")
                                .needs(Number.FASTENERS, Number.TOOLS)
                                .caution(MAGNET),
                        CLEAN_GAP,
                        step("fit-part").needs(Number.PARTS, Number.LOCATING),
                        step("close-up").needs(Number.TIGHTENING),
                        PROVE,
                        PROVE_POLARITY);
            case RECONE ->
                List.of(
                        UNPLUG,
                        step("lift-out").needs(Number.FASTENERS, Number.TOOLS).caution(LIFT, MAGNET),
                        MARK,
                        CONFIRM,
                        step("cut-out-cone").caution(MAGNET),
                        CLEAN_GAP,
                        step("centre-cone").needs(Number.PARTS),
                        step("glue-cone").caution(AIR),
                        step("connect-lead-in").needs(Number.POLARITY_AFTER),
                        step("put-back")
                                .needs(Number.LOCATING, Number.TIGHTENING)
                                .caution(LIFT),
                        PROVE,
                        PROVE_POLARITY);
            case DRIVER_SWAP ->
                List.of(
                        UNPLUG,
                        step("lift-out").needs(Number.FASTENERS, Number.TOOLS).caution(LIFT, MAGNET),
                        MARK,
                        CONFIRM,
                        step("check-unit").needs(Number.RESISTANCE),
                        step("put-back")
                                .needs(Number.LOCATING, Number.TIGHTENING)
                                .caution(LIFT),
                        PROVE,
                        PROVE_POLARITY);
            case CROSSOVER_PART ->
                List.of(
                        UNPLUG,
                        step("open-crossover").caution(LIFT),
                        step("look-at-joints"),
                        step("measure-part"),
                        step("replace-part").caution(AIR),
                        step("fix-part"),
                        PROVE);
            case CONNECTOR ->
                List.of(
                        UNPLUG,
                        step("look-at-contacts"),
                        step("clean-contacts").caution(AIR),
                        step("flex-lead-in"),
                        PROVE);
            case AIR_TIGHTNESS ->
                List.of(
                        UNPLUG.caution(MAINS, LIFT, RIGGING),
                        step("find-leak").caution(EARS),
                        step("clear-port"),
                        step("seal").caution(AIR),
                        PROVE);
        };
    }
}
