package org.docksweep.demo.drawn;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.docksweep.demo.physics.DriverMechanics;
import org.docksweep.fleet.DriverKind;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.MotionalResonance;

/** Driver models of ordinary size. Ranges are common practice, no source. */
final class DrawnDrivers {
    /** A cone driver's size: nominal width in inches, and what goes with it. */
    private enum Size {
        SIX(6.5, 137, 60, 125, 2, 4, 4500, 7000, 0.004),
        EIGHT(8, 220, 50, 100, 2.5, 5, 3500, 5500, 0.0055),
        TEN(10, 345, 45, 90, 2.5, 6, 3000, 4800, 0.0062),
        TWELVE(12, 530, 38, 65, 3.5, 7.5, 2200, 3200, 0.009),
        FIFTEEN(15, 860, 32, 50, 5, 9, 1600, 2400, 0.0125),
        EIGHTEEN(18, 1200, 28, 40, 7, 13, 1200, 1700, 0.018);

        private final double inches;
        private final double areaCm2;
        private final double lowHz;
        private final double highHz;
        private final double lowMm;
        private final double highMm;
        private final double lowBreakupHz;
        private final double highBreakupHz;
        private final double inductanceK;

        Size(
                double inches,
                double areaCm2,
                double lowHz,
                double highHz,
                double lowMm,
                double highMm,
                double lowBreakupHz,
                double highBreakupHz,
                double inductanceK) {
            this.inches = inches;
            this.areaCm2 = areaCm2;
            this.lowHz = lowHz;
            this.highHz = highHz;
            this.lowMm = lowMm;
            this.highMm = highMm;
            this.lowBreakupHz = lowBreakupHz;
            this.highBreakupHz = highBreakupHz;
            this.inductanceK = inductanceK;
        }
    }

    private static final double[] OVERTONES = {1.95, 3.3, 5.9};
    private static final double[] OVERTONE_SHARES = {0.22, 0.14, 0.075};

    private final Dice dice;
    private final String prefix;
    private final List<DriverModel> models = new ArrayList<>();
    private final Map<String, DriverMechanics> mechanics = new LinkedHashMap<>();

    DrawnDrivers(Dice dice, String prefix) {
        this.dice = dice;
        this.prefix = prefix;
    }

    List<DriverModel> models() {
        return List.copyOf(models);
    }

    Map<String, DriverMechanics> mechanics() {
        return Map.copyOf(mechanics);
    }

    /** A cone driver for the lowest way. */
    DriverModel low(double ratedOhm) {
        return cone(dice.oneOf(Size.EIGHT, Size.TEN, Size.TWELVE, Size.TWELVE, Size.FIFTEEN, Size.FIFTEEN), ratedOhm);
    }

    /** A cone driver for a subwoofer. */
    DriverModel sub(double ratedOhm) {
        return cone(dice.oneOf(Size.TWELVE, Size.FIFTEEN, Size.EIGHTEEN, Size.EIGHTEEN), ratedOhm);
    }

    /** A cone driver for the middle of three ways. */
    DriverModel middle(double ratedOhm) {
        return cone(dice.oneOf(Size.SIX, Size.EIGHT, Size.TEN), ratedOhm);
    }

    private DriverModel cone(Size size, double ratedOhm) {
        double resistanceOhm = ratedOhm * dice.between(0.66, 0.8);
        double qms = dice.between(3.5, 9);
        double qes = dice.between(0.26, 0.55);
        MotionalResonance resonance =
                new MotionalResonance(dice.between(size.lowHz, size.highHz), qms, resistanceOhm * qms / qes);
        double inductanceK = size.inductanceK * ratedOhm / 8 * dice.between(0.7, 1.4);
        DriverMechanics mechanical = new DriverMechanics(
                85.5 + 4 * Math.log(size.inches) + dice.between(1, 5) - 4 * size.inductanceK / 0.018,
                size.areaCm2 * dice.between(0.93, 1.07),
                dice.between(size.lowMm, size.highMm),
                dice.between(size.lowBreakupHz, size.highBreakupHz));
        return add(
                DriverKind.CONE,
                ratedOhm,
                resistanceOhm,
                inductanceK,
                dice.between(0.63, 0.74),
                List.of(resonance),
                mechanical);
    }

    /** A compression driver on its horn: up to four humps, the higher the weaker. */
    DriverModel compression() {
        double ratedOhm = dice.oneOf(8.0, 8.0, 8.0, 16.0);
        double resistanceOhm = ratedOhm * dice.between(0.66, 0.8);
        double mainHz = dice.between(480, 950);
        double peakOhm = resistanceOhm * dice.between(2, 4.5);
        List<MotionalResonance> humps = new ArrayList<>();
        humps.add(new MotionalResonance(mainHz, dice.between(1.7, 2.8), peakOhm));
        int more = dice.wholeBetween(1, OVERTONES.length);
        for (int k = 0; k < more; k++) {
            humps.add(new MotionalResonance(
                    mainHz * OVERTONES[k] * dice.between(0.93, 1.07),
                    dice.between(3.6, 7),
                    peakOhm * OVERTONE_SHARES[k] * dice.between(0.7, 1.4)));
        }
        double size = 700 / mainHz;
        DriverMechanics mechanical = new DriverMechanics(
                104 + dice.between(1, 4), 22 * size * size, 0.35 * size, 17_500 * Math.pow(size, -0.2));
        return add(
                DriverKind.COMPRESSION,
                ratedOhm,
                resistanceOhm,
                0.0038 * ratedOhm / 8 * dice.between(0.7, 1.35),
                dice.between(0.6, 0.67),
                humps,
                mechanical);
    }

    private DriverModel add(
            DriverKind kind,
            double ratedOhm,
            double resistanceOhm,
            double inductanceK,
            double exponent,
            List<MotionalResonance> resonances,
            DriverMechanics mechanical) {
        String code = prefix + "-" + (models.size() + 1);
        DriverModel model = new DriverModel(
                code,
                "Drawn driver " + code,
                kind,
                ratedOhm,
                resistanceOhm,
                inductanceK,
                exponent,
                resonances,
                null,
                List.of());
        models.add(model);
        mechanics.put(code, mechanical);
        return model;
    }
}
