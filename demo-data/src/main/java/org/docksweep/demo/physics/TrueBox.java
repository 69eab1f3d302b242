package org.docksweep.demo.physics;

import java.util.List;
import org.docksweep.fleet.EnclosureKind;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.complex.Complex;

/**
 * One physical enclosure as it really is, in acoustic units.
 *
 * @param id enclosure id
 * @param kind acoustic load
 * @param positionCodes drivers that share it
 * @param complianceM5PerN compliance of its air
 * @param lossFrequencyHz frequency at which the leakage loss Q holds: tuning or closed-box resonance
 * @param leakageLossQ QL
 * @param tuningHz tuning, or 0 without a working port
 * @param portLossQ Q of the port's own friction, or 0 for a frictionless port
 * @param panelHz frequency of a weak panel mode, or 0 for none
 * @param panelShare compliance of the panel mode over that of the air
 */
record TrueBox(
        String id,
        EnclosureKind kind,
        List<String> positionCodes,
        double complianceM5PerN,
        double lossFrequencyHz,
        double leakageLossQ,
        double tuningHz,
        double portLossQ,
        double panelHz,
        double panelShare) {

    private static final double PANEL_Q = 11;

    boolean loadsDrivers() {
        return kind == EnclosureKind.CLOSED || kind == EnclosureKind.VENTED;
    }

    TrueBox leaking(double lossQFactor) {
        return new TrueBox(
                id,
                kind,
                positionCodes,
                complianceM5PerN,
                lossFrequencyHz,
                leakageLossQ * lossQFactor,
                tuningHz,
                portLossQ,
                panelHz,
                panelShare);
    }

    TrueBox portBlocked() {
        return new TrueBox(
                id,
                kind,
                positionCodes,
                complianceM5PerN,
                lossFrequencyHz,
                leakageLossQ,
                0,
                portLossQ,
                panelHz,
                panelShare);
    }

    /** Admittance of the port, m5/(N s): {@code 1/(j w Map + Rap)}; 0 without a working port. */
    Complex portAdmittance(double omega) {
        if (tuningHz == 0) {
            return Complex.ZERO;
        }
        double tuningOmega = 2 * Math.PI * tuningHz;
        double mass = 1 / (tuningOmega * tuningOmega * complianceM5PerN);
        double friction = portLossQ > 0 ? tuningOmega * mass / portLossQ : 0;
        return new Complex(friction, omega * mass).reciprocal();
    }

    /** Where the reactances of port, air and panels cancel: the root of the admittance's imaginary part near the tuning. */
    double resonanceHz() {
        if (tuningHz == 0) {
            return 0;
        }
        return new BracketingNthOrderBrentSolver()
                .solve(
                        100,
                        hz -> impedance(2 * Math.PI * hz).reciprocal().getImaginary(),
                        0.8 * tuningHz,
                        1.2 * tuningHz,
                        tuningHz);
    }

    /** Admittance of leaks, m5/(N s): {@code w Cab / QL} at the frequency where QL holds. */
    double leakAdmittance() {
        return 2 * Math.PI * lossFrequencyHz * complianceM5PerN / leakageLossQ;
    }

    /** Impedance of the whole box seen by a cone, N s/m5. */
    Complex impedance(double omega) {
        Complex admittance = new Complex(leakAdmittance(), omega * complianceM5PerN).add(portAdmittance(omega));
        if (panelHz > 0) {
            double panelOmega = 2 * Math.PI * panelHz;
            double panelCompliance = complianceM5PerN * panelShare;
            double mass = 1 / (panelOmega * panelOmega * panelCompliance);
            Complex branch = new Complex(panelOmega * mass / PANEL_Q, omega * mass - 1 / (omega * panelCompliance));
            admittance = admittance.add(branch.reciprocal());
        }
        return admittance.reciprocal();
    }
}
