package org.docksweep.acoustic;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.MicrophoneTake;
import org.docksweep.sweep.SoundPrint;
import org.docksweep.sweep.SoundReader;
import org.docksweep.sweep.SweepAnalyser;
import org.docksweep.sweep.SweepSignal;

/** Makes the print of a take. Pure; the same take gives the same print to the last digit. */
public final class SoundEar implements SoundReader {
    /** The sound of a sweep this far above the noise at its clearest tenth has been heard, in dB. */
    private static final double HEARD_DB = 6;

    /** Noise below this frequency is called low, in hertz. */
    private static final double LOW_HZ = 200;

    private static final double CLEAR_DB = 15;
    private static final double DROWNED_DB = 6;

    /** Least score that is written down as an event; what it means is for the judge to say. */
    static final double NOTED_SCORE = 4;

    /** Share of points at which the sweeps disagree, from which no level is sure. */
    private static final double DISTURBED = 0.25;

    /** Level of what was not read. */
    static final double LOWEST_DB = -160;

    /**
     * The analyser of the dock: curves and prints.
     *
     * @return a new analyser
     */
    public static SweepAnalyser analyser() {
        return new SweepAnalyser().hearing(new SoundEar());
    }

    @Override
    public SoundPrint read(MicrophoneTake take) {
        double peakPa = Math.max(1e-9, sweepPeakPa(take));
        Residue residue = Residue.of(take);
        PhaseFold.Found low = new PhaseFold(residue).best();
        PhaseFold.Found high = DifferenceFold.best(take, residue);
        PhaseFold.Found found = low == null || high != null && high.score() > low.score() ? high : low;
        int rate = take.signal().sampleRateHz();
        return new SoundPrint(
                (take.arrival() - take.origin()) / (double) rate,
                rounded(take.phaseRad(), 1e4),
                significant(peakPa),
                tenth(HallShare.directDb(take)),
                bands(take, residue, peakPa),
                event(found, peakPa),
                marks(take));
    }

    private static SoundPrint.Event event(PhaseFold.Found found, double peakPa) {
        if (found == null || found.score() < NOTED_SCORE) {
            return null;
        }
        return new SoundPrint.Event(
                tenth(found.fromHz()),
                tenth(found.toHz()),
                Math.rint(found.phaseTurns() * 1e3) / 1e3,
                decibel(found.peakPa() / peakPa),
                tenth(found.score()),
                tenth(found.weakest()),
                Math.rint(found.share() * 1e3) / 1e3);
    }

    /** Largest sound while the sweep passes 1 to 15 kHz; the least of the sweeps, so that a knock does not count. */
    static double sweepPeakPa(MicrophoneTake take) {
        SweepSignal signal = take.signal();
        int rate = signal.sampleRateHz();
        double fromHz = Math.min(Residue.LOW_HZ, signal.stopHz() / 2);
        double toHz = Math.min(Residue.HIGH_HZ, signal.stopHz());
        double[] pascals = take.pascals();
        int way = take.arrival() - take.origin();
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < take.sweeps(); k++) {
            int start = take.start(k) + way;
            int from = start + (int) (rate * signal.rateConstantS() * StrictMath.log(fromHz / signal.startHz()));
            int to = start + (int) (rate * signal.rateConstantS() * StrictMath.log(toHz / signal.startHz()));
            double peak = 0;
            for (int i = Math.max(0, from); i < Math.min(pascals.length, to); i++) {
                peak = Math.max(peak, Math.abs(pascals[i]));
            }
            least = Math.min(least, peak);
        }
        return least;
    }

    private static List<SoundPrint.Band> bands(MicrophoneTake take, Residue residue, double peakPa) {
        SweepSignal signal = take.signal();
        Harmonics harmonics = Harmonics.of(take);
        List<SoundPrint.Band> bands = new ArrayList<>();
        for (double centreHz : ThirdOctave.centresWithin(signal.startHz(), signal.stopHz() / 2)) {
            double[] levels = rounded(harmonics.levelsDb(centreHz), 10);
            PeriodReadings periods = PeriodReadings.of(residue, centreHz);
            bands.add(new SoundPrint.Band(
                    significant(centreHz),
                    levels,
                    decibel(Math.sqrt(periods.meanSquare()) / peakPa),
                    decibel(periods.peak() / peakPa),
                    tenth(periods.crestDb()),
                    decibel(Math.sqrt(residue.noiseVariance(Math.min(residue.highestSweepHz(), centreHz))) / peakPa)));
        }
        return bands;
    }

    private static Set<SoundPrint.Mark> marks(MicrophoneTake take) {
        EnumSet<SoundPrint.Mark> marks = EnumSet.noneOf(SoundPrint.Mark.class);
        AcousticCurve curve = take.curve();
        double[] hz = curve.frequencyHz();
        double[] over = new double[hz.length];
        double[] level = curve.levelDb();
        double[] noise = curve.noiseDb();
        for (int i = 0; i < over.length; i++) {
            over[i] = level[i] - noise[i];
        }
        double[] sorted = over.clone();
        Arrays.sort(sorted);
        if (sorted[sorted.length * 9 / 10] < HEARD_DB) {
            marks.add(SoundPrint.Mark.UNHEARD);
        } else if (mean(hz, over, 0.3 * LOW_HZ, LOW_HZ) < DROWNED_DB && mean(hz, over, 3 * LOW_HZ, 1e9) > CLEAR_DB) {
            marks.add(SoundPrint.Mark.LOW_NOISE);
        }
        if (take.disturbed() > DISTURBED) {
            marks.add(SoundPrint.Mark.KNOCK);
        }
        if (take.sweeps() == 1) {
            marks.add(SoundPrint.Mark.SINGLE_SWEEP);
        }
        if (!marks.contains(SoundPrint.Mark.UNHEARD) && ForeignSweep.heard(take)) {
            marks.add(SoundPrint.Mark.FOREIGN_SWEEP);
        }
        return marks;
    }

    private static double mean(double[] hz, double[] values, double fromHz, double toHz) {
        double sum = 0;
        int count = 0;
        for (int i = 0; i < hz.length; i++) {
            if (hz[i] >= fromHz && hz[i] <= toHz) {
                sum += values[i];
                count++;
            }
        }
        return count == 0 ? CLEAR_DB : sum / count;
    }

    private static double[] rounded(double[] values, double steps) {
        double[] rounded = new double[values.length];
        Arrays.setAll(rounded, i -> Math.rint(values[i] * steps) / steps);
        return rounded;
    }

    private static double decibel(double ratio) {
        return tenth(Math.max(LOWEST_DB, 20 * StrictMath.log10(Math.max(1e-12, ratio))));
    }

    private static double tenth(double value) {
        return Math.rint(value * 10) / 10;
    }

    private static double significant(double value) {
        double scale = StrictMath.pow(10, 4 - Math.ceil(StrictMath.log10(value)));
        return Math.rint(value * scale) / scale;
    }
}
