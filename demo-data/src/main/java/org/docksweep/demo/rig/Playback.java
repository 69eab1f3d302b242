package org.docksweep.demo.rig;

import java.util.SplittableRandom;
import org.docksweep.demo.physics.Load;

/**
 * Everything that makes one playback this one.
 *
 * @param load what the lead is plugged into
 * @param failing the same while an intermittent lead-in lets go, or null when nothing does
 * @param failuresPerS how often it lets go, per second
 * @param contactOhm resistance of this plug-in's contacts
 * @param placementShiftS how far off the marked spot the cabinet stands, as sound travel time
 * @param latencyS delay of the audio system, the same for all channels
 * @param hallNoiseDb hall noise in dB re 20 uPa
 * @param knocksPerS knocks in the hall, on average per second
 * @param disturbance what goes wrong with the capture
 * @param random randomness of this playback
 */
record Playback(
        Load load,
        Load failing,
        double failuresPerS,
        double contactOhm,
        double placementShiftS,
        double latencyS,
        double hallNoiseDb,
        double knocksPerS,
        Disturbance disturbance,
        SplittableRandom random) {}
