package org.docksweep.demo.physics;

import org.docksweep.fleet.DriverKind;
import org.docksweep.fleet.MotionalResonance;
import org.hipparchus.complex.Complex;

/**
 * A driver with its faults and temperature applied, seen at one frequency after the other.
 *
 * <p>Shorted turns, share x: Re and Bl times (1-x), inductance times (1-x)^2 shunted by (1-x)^2 Re/x, and the shorted
 * part brakes like an eddy ring, extra mechanical loss x Bl^2/Re (derivation of a transformer secondary, no source).
 */
final class DriverCondition {
    /** An open circuit that keeps the equations finite, in ohm. */
    static final double OPEN_OHM = 1e9;
    /** Brake of a seized coil: motional impedance limited to this share of Re. */
    private static final double SEIZED_SHARE_OF_RE = 0.02;

    private final TrueDriver driver;
    private final Climate climate;
    private double seriesOhm;
    private double impedanceFactor = 1;
    private double magnetFactor = 1;
    private double shortedShare;
    private double brakeTimesRe;
    private double stiffnessFactor = 1;
    private double soundFactor = 1;
    private boolean coilShorted;
    private boolean reversed;
    private double rubDb = Double.NEGATIVE_INFINITY;

    DriverCondition(TrueDriver driver, Climate climate) {
        this.driver = driver;
        this.climate = climate;
    }

    void apply(Fault fault) {
        switch (fault.kind()) {
            case DRIVER_OPEN -> seriesOhm += OPEN_OHM;
            case DRIVER_SHORTED -> {
                coilShorted = true;
                seriesOhm += fault.severity();
            }
            case WRONG_IMPEDANCE -> impedanceFactor *= fault.severity();
            case SEIZED -> {
                brakeTimesRe += 1 / SEIZED_SHARE_OF_RE;
                soundFactor *= 0.01;
            }
            case SHORTED_TURNS -> {
                shortedShare = fault.severity();
                brakeTimesRe += fault.severity();
            }
            case CONTACT_RESISTANCE -> seriesOhm += fault.severity();
            case WAY_WEAK -> {
                soundFactor *= Math.pow(10, -fault.severity() / 20);
                stiffnessFactor *= 0.96;
            }
            case RUB -> rubDb = fault.severity();
            case MAGNET_WEAK -> magnetFactor *= fault.severity();
            case POLARITY_REVERSED -> reversed = !reversed;
            case WAY_DEAD -> soundFactor = 0;
            default -> throw new IllegalArgumentException(fault.kind() + " is not a fault of a driver");
        }
    }

    TrueDriver driver() {
        return driver;
    }

    double rubDb() {
        return rubDb;
    }

    double soundFactor() {
        return soundFactor;
    }

    /** Resistance and inductance with the cone held, with everything in series, in ohm. */
    Complex blockedOhm(double omega) {
        if (coilShorted) {
            return new Complex(seriesOhm);
        }
        double turns = 1 - shortedShare;
        double coldOhm = driver.dcResistanceOhm() * impedanceFactor;
        Complex inductive = driver.inductance().ohmAt(omega).multiply(impedanceFactor * turns * turns);
        if (shortedShare > 0) {
            double shunt = turns * turns * coldOhm * climate.copperFactor() / shortedShare;
            inductive = inductive.reciprocal().add(1 / shunt).reciprocal();
        }
        return inductive.add(coldOhm * turns * climate.copperFactor() + seriesOhm);
    }

    /** Bl with sign, in tesla metres. */
    double forceFactorTm() {
        if (coilShorted) {
            return 0;
        }
        double factor = relativeForceFactor() * (reversed ? -1 : 1);
        return driver.forceFactorTm() * factor;
    }

    private double relativeForceFactor() {
        return Math.sqrt(impedanceFactor) * magnetFactor * (1 - shortedShare) * climate.forceFactor();
    }

    /** Mechanical impedance of a cone without its box, in N s/m. */
    Complex mechanicalImpedance(double omega) {
        double stiffness = driver.stiffnessNPerM() * stiffnessFactor * climate.stiffnessFactor();
        double decades = Math.log10(omega / (2 * Math.PI * driver.freeResonanceHz()));
        // compliance C0 (1 - creep log10(j w / ws)): real part follows frequency, imaginary part is loss
        Complex softness = new Complex(1 - driver.creep() * decades, -driver.creep() * Math.PI / 2 / Math.log(10));
        Complex spring = softness.multiply(new Complex(0, omega / stiffness)).reciprocal();
        double brake = brakeTimesRe
                * driver.forceFactorTm()
                * driver.forceFactorTm()
                / (driver.dcResistanceOhm() * climate.copperFactor());
        double loss = driver.viscousLossNsPerM() * climate.lossFactor() + brake;
        return spring.add(new Complex(loss, omega * driver.movingMassKg()));
    }

    /** Motional impedance of a compression driver on its horn, in ohm. */
    Complex hornMotionalOhm(double omega) {
        if (coilShorted) {
            return Complex.ZERO;
        }
        Complex sum = resonancesOhm(omega, Math.sqrt(stiffnessFactor * hornStiffness()), hornLoss());
        Complex braked = sum.reciprocal().add(brakeTimesRe / (driver.dcResistanceOhm() * climate.copperFactor()));
        double force = relativeForceFactor();
        return braked.reciprocal().multiply(force * force);
    }

    /** Pressure at 1 m per ampere through a compression driver, in Pa/A, with the sign of its wiring. */
    Complex hornPressurePerAmpere(double omega) {
        double force = relativeForceFactor();
        if (coilShorted || soundFactor == 0) {
            return Complex.ZERO;
        }
        Complex healthy = resonancesOhm(omega, 1, 1);
        Complex ratio = hornMotionalOhm(omega).divide(healthy).divide(force);
        double mainHz = driver.resonances().get(0).frequencyHz();
        Complex shape = Shapes.highPass(omega, 0.8 * mainHz, 3)
                .multiply(Shapes.lowPass(omega, 9000, 1))
                .multiply(Shapes.lowPass(omega, driver.breakupHz(), 2));
        return ratio.multiply(shape).multiply(driver.soundPaPerA() * soundFactor * (reversed ? -1 : 1));
    }

    private Complex resonancesOhm(double omega, double frequencyFactor, double lossFactor) {
        Complex sum = Complex.ZERO;
        for (MotionalResonance term : driver.resonances()) {
            double ratio = omega / (2 * Math.PI * term.frequencyHz() * frequencyFactor);
            sum = sum.add(new Complex(lossFactor, term.q() * (ratio - 1 / ratio))
                    .reciprocal()
                    .multiply(term.peakResistanceOhm()));
        }
        return sum;
    }

    /** Metal or polymer diaphragms follow temperature less than a cloth spider (a quarter; assumed, no source). */
    private double hornStiffness() {
        return 1 + (climate.stiffnessFactor() - 1) / 4;
    }

    private double hornLoss() {
        return 1 + (climate.lossFactor() - 1) / 4;
    }

    boolean isCone() {
        return driver.kind() == DriverKind.CONE;
    }
}
