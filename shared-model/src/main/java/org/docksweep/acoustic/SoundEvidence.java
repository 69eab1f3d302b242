package org.docksweep.acoustic;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.docksweep.sweep.AcousticCurve;

/**
 * What the sound says for and against explanations, as logarithms of likelihoods that may be added to those of the
 * current. Levels are normal around the expected ones, with an error of each way and one they share; a weak way has
 * lost anything from 1 to 40 dB, 2 to 4 as likely as 4 to 8; the phase of the bands counts by their joint correlation; an event counts half its squared
 * score less what the number of looks costs.
 */
public final class SoundEvidence {
    /** Error of the shared level that makes it free: a gain knob. */
    public static final double FREE_DB = 60;

    private static final double LEAST_LOSS_DB = 1;
    private static final double MOST_LOSS_DB = 40;
    private static final double MOVE_STEP_DB = 0.5;
    /** Losses are weighed evenly on a logarithmic scale, in steps of this factor. */
    private static final double LOSS_STEP = 1.08;

    /** A level far beyond all errors is a badly known level before it is a proof: at most this much per way. */
    private static final double MOST_LEVEL_LOG = 60;

    /** A way that is turned over adds to its neighbours where it took away, or the other way round; in dB. */
    private static final double TURNED_DB = 2;

    private static final double DB_PER_NEPER = 20 / StrictMath.log(10);

    /** A way is heard when it stands this far above the noise, in dB. */
    public static final double HEARD_DB = 10;

    private final AcousticCurve curve;
    private final AcousticCurve expected;
    private final List<WayBand> bands;
    private final double wayErrorDb;
    private final double sharedErrorDb;
    private final List<Way> ways;
    private final JointPolarity polarity;

    /**
     * Level of a way.
     *
     * @param band where it was read
     * @param changeDb level against the expected one
     * @param overNoiseDb level over the noise
     * @param expectedOverNoiseDb the same if it had the level expected
     * @param noiseErrorDb standard error that the noise gives the level
     * @param polarity its phase against the reference, or null when not known
     */
    public record Way(
            WayBand band,
            double changeDb,
            double overNoiseDb,
            double expectedOverNoiseDb,
            double noiseErrorDb,
            Polarity polarity) {
        /**
         * Whether the hall is quiet enough for this way.
         *
         * @return true when it would be heard at its expected level
         */
        public boolean quietEnough() {
            return expectedOverNoiseDb >= HEARD_DB;
        }
    }

    /**
     * Weighs a curve.
     *
     * @param curve what was heard, with a print
     * @param expected what should be heard; its print may be null
     * @param bands ways
     * @param wayErrorDb standard error of one way's level against another's, in dB
     * @param sharedErrorDb standard error of all levels together, in dB; {@link #FREE_DB} when unknown
     */
    public SoundEvidence(
            AcousticCurve curve, AcousticCurve expected, List<WayBand> bands, double wayErrorDb, double sharedErrorDb) {
        this.curve = curve;
        this.expected = expected;
        this.bands = List.copyOf(bands);
        this.wayErrorDb = wayErrorDb;
        this.sharedErrorDb = sharedErrorDb;
        this.ways = this.bands.stream().map(this::way).toList();
        List<Polarity> known = new ArrayList<>();
        ways.forEach(w -> known.add(w.overNoiseDb() < HEARD_DB ? null : w.polarity()));
        this.polarity = new JointPolarity(this.bands, known);
    }

    private Way way(WayBand band) {
        double[] hz = curve.frequencyHz();
        double[] level = curve.levelDb();
        double[] noise = curve.noiseDb();
        double[] expectedHz = expected.frequencyHz();
        double[] expectedLevel = expected.levelDb();
        double change = 0;
        double over = 0;
        double expectedOver = 0;
        double noiseShare = 0;
        int count = 0;
        for (int i = 0; i < hz.length; i++) {
            int at = hz[i] < band.fromHz() || hz[i] > band.toHz() ? -1 : Arrays.binarySearch(expectedHz, hz[i]);
            if (at >= 0) {
                change += level[i] - expectedLevel[at];
                over += level[i] - noise[i];
                expectedOver += expectedLevel[at] - noise[i];
                // of what is too faint to be told from noise only that is known
                noiseShare += Math.min(1, StrictMath.pow(10, (noise[i] - level[i]) / 10));
                count++;
            }
        }
        if (count == 0) {
            throw new IllegalArgumentException("no common frequencies of the sweep and the expected level between "
                    + band.fromHz() + " and " + band.toHz() + " Hz; teach the reference with the sweep in use");
        }
        return new Way(
                band,
                change / count,
                over / count,
                expectedOver / count,
                noiseErrorDb(noiseShare / count, band),
                Polarity.of(curve, expected, band.fromHz(), band.toHz()));
    }

    /**
     * Noise of the same phase as the sound moves its level, that beside it does not: half its power counts. Thirds of an octave are
     * independent.
     */
    private static double noiseErrorDb(double powerShare, WayBand band) {
        double thirds = Math.max(1, 3 * StrictMath.log(band.toHz() / band.fromHz()) / StrictMath.log(2));
        return DB_PER_NEPER * Math.sqrt(powerShare / 2 / thirds);
    }

    /**
     * Levels of the ways.
     *
     * @return in the order of the bands
     */
    public List<Way> ways() {
        return ways;
    }

    /**
     * Standard error of one way's level.
     *
     * @return dB
     */
    public double wayErrorDb() {
        return wayErrorDb;
    }

    /**
     * Level that all ways share against the expected one.
     *
     * @return dB; of the loudest way when a knob makes it free
     */
    public double sharedDb() {
        double[] changes = ways.stream().mapToDouble(Way::changeDb).sorted().toArray();
        return sharedErrorDb >= FREE_DB ? changes[changes.length - 1] : changes[changes.length / 2];
    }

    /**
     * Logarithm of the likelihood that all ways are at their levels.
     *
     * @param widened factor on the error of a way
     * @return logarithm, up to a constant shared by all explanations
     */
    public double levelsHealthy(double widened) {
        return normal(changes(), errors(wayErrorDb * widened));
    }

    /**
     * Logarithm of the likelihood of the levels when one way is turned over: it and its neighbours are then louder or softer
     * about the crossover.
     *
     * @param way number of the way
     * @return logarithm, up to the same constant
     */
    public double levelsTurned(int way) {
        double[] errors = errors(wayErrorDb);
        for (int w = Math.max(0, way - 1); w <= Math.min(errors.length - 1, way + 1); w++) {
            errors[w] = Math.hypot(errors[w], TURNED_DB);
        }
        return normal(changes(), ways.size() == 1 ? errors(wayErrorDb) : errors);
    }

    private double[] errors(double error) {
        double[] errors = new double[ways.size()];
        Arrays.setAll(errors, w -> Math.hypot(error, ways.get(w).noiseErrorDb()));
        return errors;
    }

    /**
     * Logarithm of the likelihood that one way has lost level.
     *
     * @param way number of the way
     * @param leastDb least loss
     * @return logarithm, up to the same constant
     */
    public double levelsWith(int way, double leastDb) {
        List<Double> logs = new ArrayList<>();
        double[] changes = changes();
        double from = Math.max(LEAST_LOSS_DB, leastDb);
        for (double loss = from; loss <= MOST_LOSS_DB; loss *= LOSS_STEP) {
            double[] moved = changes.clone();
            // What is too faint to be heard has lost at least this much.
            moved[way] = Math.max(moved[way], -MOST_LOSS_DB) + loss;
            logs.add(normal(moved, errors(wayErrorDb)));
        }
        return logMean(logs);
    }

    /**
     * Logarithm of the likelihood that one way has lost so much level.
     *
     * @param way number of the way
     * @param lossDb loss
     * @return logarithm, up to the same constant
     */
    public double levelsBy(int way, double lossDb) {
        double[] moved = changes();
        moved[way] += lossDb;
        return normal(moved, errors(wayErrorDb));
    }

    /**
     * Whether the hall's noise hides more of a level than what healthy cabinets differ in.
     *
     * @return true if so for any way
     */
    public boolean noiseHidesLevels() {
        return ways.stream().anyMatch(w -> w.noiseErrorDb() > wayErrorDb);
    }

    /**
     * Logarithm of the likelihood that everything is heard louder or softer alike: microphone or cabinet off its mark.
     *
     * @return logarithm, up to the same constant
     */
    public double levelsMoved() {
        List<Double> logs = new ArrayList<>();
        double[] changes = changes();
        for (double move = -30; move <= 20; move += MOVE_STEP_DB) {
            double[] moved = changes.clone();
            for (int i = 0; i < moved.length; i++) {
                moved[i] -= move;
            }
            logs.add(normal(moved, errors(wayErrorDb)));
        }
        return logMean(logs);
    }

    private double[] changes() {
        return ways.stream().mapToDouble(Way::changeDb).toArray();
    }

    /** Normal with an error of each and one they share: covariance diag(e^2) + s^2 11^T (Sherman and Morrison). */
    private double normal(double[] values, double[] errors) {
        double weights = 0;
        double sum = 0;
        double squares = 0;
        double logDeterminant = 0;
        for (int i = 0; i < values.length; i++) {
            double weight = 1 / (errors[i] * errors[i]);
            weights += weight;
            sum += weight * values[i];
            squares += weight * values[i] * values[i];
            logDeterminant -= StrictMath.log(weight);
        }
        double shared = sharedErrorDb * sharedErrorDb;
        double chi2 = squares - shared * sum * sum / (1 + shared * weights);
        logDeterminant += StrictMath.log(1 + shared * weights);
        return -0.5 * Math.min(chi2, 2 * MOST_LEVEL_LOG * values.length) - 0.5 * logDeterminant;
    }

    private static double logMean(List<Double> logs) {
        double largest = logs.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
        double sum = 0;
        for (double log : logs) {
            sum += StrictMath.exp(log - largest);
        }
        return largest + StrictMath.log(sum / logs.size());
    }

    /**
     * Logarithm of the likelihood ratio of a way reversed over not reversed, all ways having one delay.
     *
     * @param way number of the way
     * @return logarithm; 0 where the phase is not known or the way not heard, or where a way that is alone is not surely
     *     reversed
     */
    public double reversed(int way) {
        double log = polarity.log(way);
        Polarity alone = ways.get(way).polarity();
        return log > 0 && polarity.alone(way) && !alone.surelyReversed() ? 0 : log;
    }

    /**
     * How much better the expected sound fits with a way turned over.
     *
     * @param way number of the way
     * @return ratio of what is left over
     */
    public double turnedRatio(int way) {
        return polarity.ratio(way);
    }

    /**
     * Logarithm of the likelihood ratio of touching parts over none.
     *
     * @return logarithm; 0 where the cabinet's own bursts are not known
     */
    public double touching() {
        return TouchingParts.log(curve.print(), expected.print());
    }

    /**
     * How much the early sound has lost against the hall's answer.
     *
     * @return dB, negative for a loss; 0 where it is not known
     */
    public double directChangeDb() {
        boolean known = expected.print() != null && ways.get(ways.size() - 1).overNoiseDb() >= HEARD_DB;
        return known ? curve.print().directDb() - expected.print().directDb() : 0;
    }

    /**
     * Arrival of the sound against the expected one.
     *
     * @return seconds, positive when later; 0 where it is not known
     */
    public double arrivalChangeS() {
        return expected.print() == null
                ? 0
                : curve.print().arrivalS() - expected.print().arrivalS();
    }
}
