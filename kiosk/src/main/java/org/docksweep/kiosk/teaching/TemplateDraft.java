package org.docksweep.kiosk.teaching;

import java.util.Locale;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.template.TwoWayTemplate;

/**
 * A template drawing being filled in from the cabinet's plate. Every value has an ordinary one to begin with and goes on to the
 * next at a key, so that nobody has to know what to type.
 *
 * @param code code typed, or empty
 * @param impedanceOhm rated impedance
 * @param crossoverHz crossover frequency
 * @param slopeDb slope in dB per octave
 * @param box closed or vented
 * @param woofers cones
 * @param inches size of a cone
 * @param padDb pad before the horn
 */
record TemplateDraft(
        String code,
        double impedanceOhm,
        double crossoverHz,
        int slopeDb,
        EnclosureKind box,
        int woofers,
        double inches,
        double padDb) {

    private static final double[] IMPEDANCES = {8, 16, 4};
    private static final double[] CROSSOVERS = {1800, 2200, 2800, 3500, 800, 1000, 1200, 1500};
    private static final double[] SLOPES = {12, 18, 24, 6};
    private static final double[] SIZES = {12, 15, 18, 8, 10};
    private static final double[] PADS = {6, 9, 0, 3};
    private static final String UNNAMED = "NEW";

    static TemplateDraft usual() {
        return new TemplateDraft("", 8, 1800, 12, EnclosureKind.VENTED, 1, 12, 6);
    }

    private static double after(double[] values, double now) {
        for (int i = 0; i < values.length; i++) {
            if (values[i] == now) {
                return values[(i + 1) % values.length];
            }
        }
        return values[0];
    }

    TemplateDraft named(String typed) {
        return new TemplateDraft(
                typed.toUpperCase(Locale.ROOT), impedanceOhm, crossoverHz, slopeDb, box, woofers, inches, padDb);
    }

    /** One of four drawings: vented or closed, one woofer or two. */
    TemplateDraft otherDrawing() {
        boolean vented = box == EnclosureKind.VENTED;
        return new TemplateDraft(
                code,
                impedanceOhm,
                crossoverHz,
                slopeDb,
                vented ? EnclosureKind.CLOSED : EnclosureKind.VENTED,
                vented ? woofers : 3 - woofers,
                inches,
                padDb);
    }

    TemplateDraft with(TeachingStep step) {
        return switch (step) {
            case OTHER_DRAWING -> otherDrawing();
            case OTHER_IMPEDANCE ->
                new TemplateDraft(
                        code, after(IMPEDANCES, impedanceOhm), crossoverHz, slopeDb, box, woofers, inches, padDb);
            case OTHER_CROSSOVER ->
                new TemplateDraft(
                        code, impedanceOhm, after(CROSSOVERS, crossoverHz), slopeDb, box, woofers, inches, padDb);
            case OTHER_SLOPE ->
                new TemplateDraft(
                        code, impedanceOhm, crossoverHz, (int) after(SLOPES, slopeDb), box, woofers, inches, padDb);
            case OTHER_SIZE ->
                new TemplateDraft(code, impedanceOhm, crossoverHz, slopeDb, box, woofers, after(SIZES, inches), padDb);
            case OTHER_PAD ->
                new TemplateDraft(code, impedanceOhm, crossoverHz, slopeDb, box, woofers, inches, after(PADS, padDb));
            default -> throw new IllegalArgumentException(step + " changes nothing of a drawing");
        };
    }

    ModelBook book() {
        String name = code.isEmpty() ? UNNAMED : code;
        return new TwoWayTemplate(name, name, impedanceOhm, crossoverHz, slopeDb, box, woofers, inches, padDb).book();
    }

    CabinetModel model() {
        return book().cabinetModels().get(0);
    }
}
