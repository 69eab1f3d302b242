package org.docksweep.gate;

import java.time.Instant;
import org.docksweep.fleet.AssetTag;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * The last good curves of one cabinet at one test point: its own reference, several times more sensitive than the
 * model's.
 *
 * @param tag cabinet
 * @param testPointCode test point
 * @param takenAt when it was measured
 * @param ambientCelsius air temperature then, or null
 * @param impedance calibrated impedance, or null for a line input
 * @param acoustic acoustic response, or null without a microphone
 */
public record Baseline(
        AssetTag tag,
        String testPointCode,
        Instant takenAt,
        Double ambientCelsius,
        ImpedanceCurve impedance,
        AcousticCurve acoustic) {}
