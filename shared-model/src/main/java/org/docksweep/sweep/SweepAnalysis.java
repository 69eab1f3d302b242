package org.docksweep.sweep;

import static org.docksweep.fleet.Require.notNegative;

import java.util.List;
import java.util.Optional;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Require;

/**
 * What a capture says: curves as far as they could be made, the load seen, and what is wrong with the capture.
 *
 * @param impedance raw impedance on the analysis grid, not yet corrected for the rig; null without voltage and current
 *     or when the capture is spoiled; of an open it is what leaks through the lead, which a calibration needs
 * @param acoustic microphone response; null without a usable microphone channel
 * @param load what the terminals looked like
 * @param meanVoltageVrms voltage during the sweep, in volts rms; 0 when not measured
 * @param meanCurrentArms current during the sweep, in amperes rms; 0 when not measured
 * @param currentDropouts seconds into the capture at which current fell away while voltage stayed (an intermittent
 *     contact or lead-in, evidence and not a spoiled sweep)
 * @param inconsistency how far real and imaginary part of the impedance are from belonging together, rms over all points relative to
 *     the magnitude around ({@link Causality}); a healthy measurement stays below 0.005; 0 when not tested
 * @param issues what is wrong with the capture; empty for a clean one
 */
public record SweepAnalysis(
        ImpedanceCurve impedance,
        AcousticCurve acoustic,
        Load load,
        double meanVoltageVrms,
        double meanCurrentArms,
        List<Double> currentDropouts,
        double inconsistency,
        List<Issue> issues) {

    /** What the terminals looked like. */
    public enum Load {
        /** A load of ordinary impedance. */
        PRESENT,
        /** Voltage arrives, no current flows: nothing connected, or an open circuit. */
        OPEN,
        /** Near zero impedance over the whole band. */
        SHORT,
        /** Not measured (line input) or not known (spoiled capture). */
        UNKNOWN
    }

    /**
     * One thing wrong with a capture.
     *
     * @param kind what
     * @param reason in words for the dock hand, with what to do
     */
    public record Issue(QualityIssue kind, Reason reason) {}

    public SweepAnalysis {
        if (load == null) {
            throw new IllegalArgumentException("sweep analysis: load is missing");
        }
        notNegative("sweep analysis inconsistency", inconsistency);
        currentDropouts = Require.copy("current dropouts", currentDropouts);
        issues = Require.copy("issues", issues);
    }

    /**
     * An analysis whose consistency was not tested.
     *
     * @param impedance raw impedance, or null
     * @param acoustic microphone response, or null
     * @param load what the terminals looked like
     * @param meanVoltageVrms voltage during the sweep, in volts rms
     * @param meanCurrentArms current during the sweep, in amperes rms
     * @param currentDropouts seconds at which current fell away
     * @param issues what is wrong
     */
    public SweepAnalysis(
            ImpedanceCurve impedance,
            AcousticCurve acoustic,
            Load load,
            double meanVoltageVrms,
            double meanCurrentArms,
            List<Double> currentDropouts,
            List<Issue> issues) {
        this(impedance, acoustic, load, meanVoltageVrms, meanCurrentArms, currentDropouts, 0, issues);
    }

    /**
     * Whether the capture may be judged.
     *
     * @return true when nothing is wrong with it
     */
    public boolean clean() {
        return issues.isEmpty();
    }

    /**
     * The first issue, which names the cause in words.
     *
     * @return the issue
     */
    public Optional<Issue> firstIssue() {
        return issues.stream().findFirst();
    }
}
