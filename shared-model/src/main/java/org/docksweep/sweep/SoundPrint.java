package org.docksweep.sweep;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.docksweep.fleet.Require;

/**
 * What the microphone heard beyond the level: phase, distortion by order, what is left above the 10th order, and events
 * that come back at the same phase in every sweep. Levels of residue and bursts are in dB re {@code sweepPeakPa}, the
 * largest sound of the sweep while it passes 1 to 15 kHz. Arrays are copied in and out.
 *
 * @param arrivalS delay of the sound behind the voltage, in seconds; 0 without a voltage channel
 * @param phaseRad phase of pressure over voltage with that delay taken off, at the curve's frequencies
 * @param sweepPeakPa largest sound pressure of the sweep between 1 and 15 kHz, in pascals
 * @param directDb energy of the early sound over that of the hall in the uppermost two octaves heard, in dB
 * @param bands distortion in third-octave bands of the sweep's frequency, rising
 * @param event what came back at the same phase, or null when nothing did
 * @param marks what is wrong with the sound as a measurement
 */
public record SoundPrint(
        double arrivalS,
        double[] phaseRad,
        double sweepPeakPa,
        double directDb,
        List<Band> bands,
        Event event,
        Set<Mark> marks) {

    /** What can be wrong with the sound as a measurement. */
    public enum Mark {
        /** The sweep is not in the channel: microphone unplugged, far away, or the cabinet silent. */
        UNHEARD,
        /** Noise below 200 Hz drowns the low frequencies: wind, a fan, a draught. */
        LOW_NOISE,
        /** Another cabinet is being swept at the same time. */
        FOREIGN_SWEEP,
        /** The sweeps do not agree over much of the band: short noises fell into them, and no level is sure. */
        KNOCK,
        /** One sweep only: nothing can come back. */
        SINGLE_SWEEP
    }

    /**
     * Distortion while the sweep passes a third-octave band.
     *
     * @param centreHz middle of the band (IEC 61260 base ten)
     * @param harmonicDb level of the orders 2, 3, ... re the fundamental at the same drive, in dB; as many as the sweep
     *     reaches, at most 8
     * @param residueDb rms of everything above the 10th order within 1 to 15 kHz, in dB re the sweep's peak
     * @param burstDb largest peak of that residue that comes back in every sweep, in dB re the sweep's peak
     * @param crestDb crest factor of the residue over one period, in dB: the lesser of the sweeps
     * @param noiseDb rms that the noise of the silence before the sweep has in the same filter, in dB re the sweep's peak
     */
    public record Band(
            double centreHz, double[] harmonicDb, double residueDb, double burstDb, double crestDb, double noiseDb) {
        public Band {
            harmonicDb = harmonicDb.clone();
        }

        @Override
        public double[] harmonicDb() {
            return harmonicDb.clone();
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Band that
                    && centreHz == that.centreHz
                    && residueDb == that.residueDb
                    && burstDb == that.burstDb
                    && crestDb == that.crestDb
                    && noiseDb == that.noiseDb
                    && Arrays.equals(harmonicDb, that.harmonicDb);
        }

        @Override
        public int hashCode() {
            return Double.hashCode(centreHz) * 31 + Arrays.hashCode(harmonicDb);
        }

        @Override
        public String toString() {
            return "Band[" + centreHz + " Hz, residue " + residueDb + " dB, bursts " + burstDb + " dB]";
        }
    }

    /**
     * Short events that sit at the same phase of the sweep in every sweep.
     *
     * @param fromHz sweep frequency at which they begin
     * @param toHz sweep frequency at which they end
     * @param phaseTurns where in the period they sit, 0 to 1, counted from the rising zero of the drive as it is heard
     * @param burstDb median peak of the bursts, in dB re the sweep's peak
     * @param score how many standard deviations of noise alone the fold stands out with
     * @param weakestScore the same of the sweep that shows it least
     * @param share share of the periods that show it in every sweep
     */
    public record Event(
            double fromHz,
            double toHz,
            double phaseTurns,
            double burstDb,
            double score,
            double weakestScore,
            double share) {}

    public SoundPrint {
        phaseRad = phaseRad.clone();
        bands = Require.copy("bands", bands);
        marks = Set.copyOf(marks);
    }

    @Override
    public double[] phaseRad() {
        return phaseRad.clone();
    }

    /**
     * The band that holds a frequency.
     *
     * @param frequencyHz frequency of the sweep
     * @return the band, or null when the sweep's bands do not reach there
     */
    public Band bandAt(double frequencyHz) {
        double reach = StrictMath.pow(10, 0.05) * 1.0001;
        return bands.stream()
                .filter(b -> frequencyHz <= b.centreHz() * reach && frequencyHz >= b.centreHz() / reach)
                .findFirst()
                .orElse(null);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SoundPrint that
                && arrivalS == that.arrivalS
                && sweepPeakPa == that.sweepPeakPa
                && directDb == that.directDb
                && Arrays.equals(phaseRad, that.phaseRad)
                && bands.equals(that.bands)
                && java.util.Objects.equals(event, that.event)
                && marks.equals(that.marks);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(phaseRad) * 31 + bands.hashCode();
    }

    @Override
    public String toString() {
        return "SoundPrint[" + bands.size() + " bands, event " + event + ", marks " + marks + "]";
    }
}
