package org.docksweep.acoustic;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.docksweep.fleet.Require;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.SoundPrint;

/**
 * What a microphone reads of a known passive cabinet at its marked spot, in third octaves from 125 Hz to 12.5 kHz.
 *
 * <p>The level is pressure over current: {@code 20 lg(|p / V| |Z|)}. A warm coil or another contact of the plug moves
 * {@code |p / V|} and {@code |Z|} against each other and leaves it as it was, so that what is left is the microphone's.
 *
 * @param arrivalS arrival of the sound behind the voltage, in seconds, at least 0
 * @param bands bands, rising, at least one
 */
public record MicrophoneReading(double arrivalS, List<Band> bands) {
    private static final double FROM_HZ = 110;
    private static final double TO_HZ = 14_200;

    /**
     * A third octave.
     *
     * @param centreHz middle of the band (IEC 61260 base ten), in hertz
     * @param levelDb mean level in dB re 1 Pa/A
     * @param noiseDb mean noise of the hall and the microphone in the same unit
     * @param ohm mean magnitude of the cabinet's impedance, in ohm, greater than 0
     */
    public record Band(double centreHz, double levelDb, double noiseDb, double ohm) {
        public Band {
            Require.positive("microphone band centreHz", centreHz);
            Require.inRange("microphone band levelDb", levelDb, -400, 400);
            Require.inRange("microphone band noiseDb", noiseDb, -400, 400);
            Require.positive("microphone band ohm", ohm);
        }
    }

    public MicrophoneReading {
        Require.notNegative("microphone arrivalS", arrivalS);
        bands = Require.notEmpty("microphone bands", bands);
    }

    /**
     * Reads a sweep.
     *
     * @param heard what the microphone heard, or null when its channel was dead
     * @param impedance calibrated impedance of the cabinet in the same sweep
     * @return the reading; empty when the sweep was not heard
     */
    public static Optional<MicrophoneReading> of(AcousticCurve heard, ImpedanceCurve impedance) {
        if (heard == null || heard.print() == null || heard.print().marks().contains(SoundPrint.Mark.UNHEARD)) {
            return Optional.empty();
        }
        double[] hz = heard.frequencyHz();
        double[] level = heard.levelDb();
        double[] noise = heard.noiseDb();
        double[] impedanceHz = impedance.frequencyHz();
        List<Band> bands = new ArrayList<>();
        for (double centreHz : ThirdOctave.centresWithin(FROM_HZ, TO_HZ)) {
            double levels = 0;
            double noises = 0;
            double logOhm = 0;
            int count = 0;
            for (int i = 0; i < hz.length; i++) {
                boolean within = hz[i] >= centreHz / ThirdOctave.HALF_BAND && hz[i] < centreHz * ThirdOctave.HALF_BAND;
                int at = within ? Arrays.binarySearch(impedanceHz, hz[i]) : -1;
                if (at >= 0) {
                    double log = StrictMath.log10(Math.max(1e-6, impedance.magnitudeOhm(at)));
                    levels += level[i] + 20 * log;
                    noises += noise[i] + 20 * log;
                    logOhm += log;
                    count++;
                }
            }
            if (count > 0) {
                bands.add(new Band(
                        Math.rint(centreHz * 10) / 10,
                        hundredth(levels / count),
                        hundredth(noises / count),
                        Math.rint(StrictMath.pow(10, logOhm / count) * 1e3) / 1e3));
            }
        }
        return bands.isEmpty()
                ? Optional.empty()
                : Optional.of(new MicrophoneReading(Math.max(0, heard.print().arrivalS()), bands));
    }

    private static double hundredth(double value) {
        return Math.rint(value * 100) / 100;
    }
}
