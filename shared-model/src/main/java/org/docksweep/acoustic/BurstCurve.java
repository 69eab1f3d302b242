package org.docksweep.acoustic;

import java.util.List;
import org.docksweep.sweep.SoundPrint;

/**
 * What came back at the same phase, against the sweep's frequency, over what noise alone would show: the picture of a coil that
 * rubs or a part that is loose. Levels in dB re the sweep's peak.
 *
 * @param frequencyHz middles of third-octave bands, rising, in hertz
 * @param burstDb largest peak that comes back in every sweep
 * @param noiseDb rms of the noise
 * @param noiseReachDb up to where a peak is noise's own
 */
public record BurstCurve(double[] frequencyHz, double[] burstDb, double[] noiseDb, double[] noiseReachDb) {
    public BurstCurve {
        frequencyHz = frequencyHz.clone();
        burstDb = burstDb.clone();
        noiseDb = noiseDb.clone();
        noiseReachDb = noiseReachDb.clone();
    }

    /**
     * The curve of a print.
     *
     * @param print what was heard
     * @return its bands
     */
    public static BurstCurve of(SoundPrint print) {
        List<SoundPrint.Band> bands = print.bands();
        return new BurstCurve(
                bands.stream().mapToDouble(SoundPrint.Band::centreHz).toArray(),
                bands.stream().mapToDouble(SoundPrint.Band::burstDb).toArray(),
                bands.stream().mapToDouble(TouchingParts::noiseDb).toArray(),
                bands.stream().mapToDouble(TouchingParts::noiseReachDb).toArray());
    }

    @Override
    public double[] frequencyHz() {
        return frequencyHz.clone();
    }

    @Override
    public double[] burstDb() {
        return burstDb.clone();
    }

    @Override
    public double[] noiseDb() {
        return noiseDb.clone();
    }

    @Override
    public double[] noiseReachDb() {
        return noiseReachDb.clone();
    }
}
