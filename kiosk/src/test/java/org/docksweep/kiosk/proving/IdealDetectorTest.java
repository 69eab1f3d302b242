package org.docksweep.kiosk.proving;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ServiceLoader;
import org.docksweep.contract.ProvingFault;
import org.docksweep.contract.ProvingFaultKind;
import org.docksweep.contract.ProvingGround;
import org.docksweep.contract.ProvingGround.Models;
import org.junit.jupiter.api.Test;

class IdealDetectorTest {
    private static final ProvingGround GROUND =
            ServiceLoader.load(ProvingGround.class).findFirst().orElseThrow();
    private static final ProvingOptions OPTIONS = Runs.of(Models.TUNING, 1, 10, 1);
    /** Enough for a plain point, whose covariance then comes out small by a tenth or so; a study takes more. */
    private static final int UNITS = 100;

    private static final IdealDetector DETECTOR =
            new IdealDetector(GROUND, OPTIONS, GROUND.book(Models.TUNING, 1).cabinetModel("DUNE15B"), UNITS);

    private static IdealDetector.Bound bound(ProvingFaultKind kind, String target, Knowing knowing, double severity) {
        ProvingFault fault = GROUND.faults("DUNE15B").stream()
                .filter(f -> f.kind() == kind && f.target().equals(target))
                .findFirst()
                .orElseThrow();
        return DETECTOR.bound(fault, knowing, severity);
    }

    /** Standard normal table (NIST/SEMATECH e-Handbook 1.3.6.7.1): 99.5 % at 2.576, half at 0, 97.7 % at 2. */
    @Test
    void missesWhatTheNormalDistributionSays() {
        assertThat(IdealDetector.missed(0, 0.005)).isCloseTo(0.995, within(1e-6));
        assertThat(IdealDetector.missed(2.576, 0.005)).isCloseTo(0.5, within(1e-3));
        assertThat(IdealDetector.missed(4.576, 0.005)).isCloseTo(0.0228, within(1e-3));
    }

    @Test
    void seesNothingInNothing() {
        IdealDetector.Bound none = bound(ProvingFaultKind.CONTACT_RESISTANCE, "LF", Knowing.REFERENCE, 1e-5);
        assertThat(none.deviations()).isLessThan(0.5);
        assertThat(none.missed()).isGreaterThan(0.9);
        assertThat(none.beyond()).isTrue();
    }

    /** A small fault of twice the size stands out by twice as much; the cabinet's own past shows more than the model. */
    @Test
    void growsWithTheFaultAndWithWhatIsKnown() {
        double one = bound(ProvingFaultKind.CONTACT_RESISTANCE, "LF", Knowing.REFERENCE, 0.01)
                .deviations();
        double two = bound(ProvingFaultKind.CONTACT_RESISTANCE, "LF", Knowing.REFERENCE, 0.02)
                .deviations();
        double own = bound(ProvingFaultKind.CONTACT_RESISTANCE, "LF", Knowing.BASELINE, 0.01)
                .deviations();
        assertThat(two / one).isCloseTo(2, within(0.05));
        assertThat(own).isGreaterThan(one);
    }

    /**
     * At a driver's own terminals a joint of c ohm hides in the plugs: with a baseline two of them, each even over 0.12 ohm, so that it cannot stand
     * out by more than c sqrt(6) / 0.12.
     */
    @Test
    void hidesAJointBehindThePlugs() {
        double jointOhm = 0.01
                * GROUND.book(Models.TUNING, 1)
                        .driverModelAt(GROUND.book(Models.TUNING, 1).cabinetModel("DUNE15B"), "LF")
                        .dcResistanceOhm();
        double most = jointOhm * Math.sqrt(6) / 0.12;
        assertThat(bound(ProvingFaultKind.CONTACT_RESISTANCE, "LF", Knowing.BASELINE, 0.01)
                        .deviations())
                .isBetween(0.2 * most, 1.3 * most);
    }
}
