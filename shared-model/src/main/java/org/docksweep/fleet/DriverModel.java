package org.docksweep.fleet;

import static org.docksweep.fleet.Require.inRange;
import static org.docksweep.fleet.Require.notNegative;
import static org.docksweep.fleet.Require.positive;
import static org.docksweep.fleet.Require.text;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.List;

/**
 * A driver model: the nominal values of its healthy, run-in units at 20 C and what the bench needs to know.
 *
 * <p>Blocked impedance: {@code Re + K (j 2 pi f)^n} (lossy inductance, Leach 2002); motional impedance: sum of
 * {@link #resonances()}. A cone driver has exactly one resonance (free air, f0 = fs).
 *
 * @param code short code, unique in the fleet, for example {@code DUNE-15}
 * @param name name in words
 * @param kind construction
 * @param ratedImpedanceOhm rated impedance, greater than 0
 * @param dcResistanceOhm Re at 20 C, greater than 0
 * @param lossyInductanceK K of the lossy inductance, in ohm s^n, at least 0
 * @param lossyInductanceExponent n of the lossy inductance, from 0.3 to 1
 * @param resonances motional resonances, at least one, main one first
 * @param polarityMark how the positive terminal of this model is marked, or null when unknown
 * @param diaphragmPartNumbers part numbers of diaphragms or recone kits that fit, may be empty
 */
public record DriverModel(
        String code,
        String name,
        DriverKind kind,
        double ratedImpedanceOhm,
        double dcResistanceOhm,
        double lossyInductanceK,
        double lossyInductanceExponent,
        List<MotionalResonance> resonances,
        String polarityMark,
        List<String> diaphragmPartNumbers) {

    public DriverModel {
        text("driver model code", code);
        text("driver model name", name);
        if (kind == null) {
            throw new IllegalArgumentException("driver model " + code + ": kind must be one of CONE, COMPRESSION");
        }
        positive("driver model " + code + " ratedImpedanceOhm", ratedImpedanceOhm);
        positive("driver model " + code + " dcResistanceOhm", dcResistanceOhm);
        notNegative("driver model " + code + " lossyInductanceK", lossyInductanceK);
        inRange("driver model " + code + " lossyInductanceExponent", lossyInductanceExponent, 0.3, 1.0);
        resonances = Require.notEmpty("driver model " + code + " resonances", resonances);
        if (kind == DriverKind.CONE && resonances.size() != 1) {
            throw new IllegalArgumentException("driver model " + code
                    + ": a cone driver has exactly one resonance, but " + resonances.size() + " are given");
        }
        diaphragmPartNumbers = Require.copy("driver model " + code + " diaphragmPartNumbers", diaphragmPartNumbers);
    }

    /**
     * Mechanical quality factor of the main resonance.
     *
     * @return Qms
     */
    @JsonIgnore
    public double qms() {
        return resonances.get(0).q();
    }

    /**
     * Electrical quality factor of the main resonance: {@code Qes = Qms Re / peakResistance}.
     *
     * @return Qes
     */
    @JsonIgnore
    public double qes() {
        return resonances.get(0).q() * dcResistanceOhm / resonances.get(0).peakResistanceOhm();
    }
}
