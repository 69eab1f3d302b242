package org.docksweep.acoustic;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.docksweep.fleet.Require;

/**
 * A reading of the known cabinet held against the accepted one: gain, capsule, noise floor, place. Limits are what the gate
 * believes of a level (0.3 dB, three times) and of a mark on the floor; common practice, no source.
 *
 * @param gainDb median of the bands' level against the accepted one, in dB
 * @param shapeDb what of the response's shape has changed most once that is taken off, averaged over an octave, in dB
 * @param shapeHz middle of that octave, in hertz
 * @param movedM way of the sound against the accepted one, in metres, positive when longer
 * @param noiseDb median of the bands' noise against the accepted one, in dB
 * @param fault what is wrong first of all
 */
public record MicrophoneCheck(
        double gainDb, double shapeDb, double shapeHz, double movedM, double noiseDb, Fault fault) {
    /** Largest accepted change of the gain, in dB; the limit itself passes. */
    public static final double GAIN_LIMIT_DB = 1;

    /** Largest accepted change of the response's shape, in dB. */
    public static final double SHAPE_LIMIT_DB = 1.5;

    /** Largest accepted change of the way of the sound at one temperature, in metres. */
    public static final double MOVED_LIMIT_M = 0.05;

    /** Air that is 17 K warmer carries sound 3 % quicker (c grows as the root of the absolute temperature). */
    public static final double AIR_SHARE = 0.03;

    /** Largest accepted rise of the noise, in dB: halls differ that much between a calm and a busy hour. */
    public static final double NOISE_LIMIT_DB = 20;

    /** Speed of sound at 20 C, in metres per second. */
    public static final double SOUND_M_PER_S = 343;

    /** A band counts when it stands this far above the noise: noise then moves its level by less than 0.3 dB. */
    private static final double CLEAR_DB = 15;

    private static final int FEWEST_BANDS = 10;
    private static final int OCTAVE = 3;

    /** A coil that is 40 K warmer has 16 % more resistance; what differs by more on average is another cabinet. */
    private static final double OTHER_CABINET = 0.2;

    /** What can be wrong. */
    public enum Fault {
        /** Nothing. */
        NONE,
        /** The sweep was not heard. */
        UNHEARD,
        /** Microphone or cabinet is off its mark. */
        MOVED,
        /** The response has another shape: the capsule, or the known cabinet itself. */
        CAPSULE,
        /** All is louder or softer alike: another gain. */
        GAIN,
        /** The noise floor has risen: hiss of the input, or a loud hall. */
        NOISE
    }

    public MicrophoneCheck {
        Require.inRange("microphone gainDb", gainDb, -400, 400);
        Require.inRange("microphone shapeDb", shapeDb, -400, 400);
        Require.notNegative("microphone shapeHz", shapeHz);
        Require.inRange("microphone movedM", movedM, -100, 100);
        Require.inRange("microphone noiseDb", noiseDb, -400, 400);
        if (fault == null) {
            throw new IllegalArgumentException("the fault of a microphone check is missing; NONE when there is none");
        }
    }

    /**
     * A check in which nothing was heard.
     *
     * @return the check, failed
     */
    public static MicrophoneCheck unheard() {
        return new MicrophoneCheck(0, 0, 0, 0, 0, Fault.UNHEARD);
    }

    /**
     * Whether noise leaves enough of a reading to say anything.
     *
     * @param reading the reading
     * @return false when fewer than 10 bands stand 15 dB above their noise
     */
    public static boolean clear(MicrophoneReading reading) {
        return reading.bands().stream().filter(MicrophoneCheck::clear).count() >= FEWEST_BANDS;
    }

    /**
     * Whether two readings may be of one cabinet, by its impedance.
     *
     * @param one a reading
     * @param other another
     * @return false when their impedances differ by more than a fifth on average
     */
    public static boolean sameCabinet(MicrophoneReading one, MicrophoneReading other) {
        double sum = 0;
        int count = 0;
        for (MicrophoneReading.Band band : one.bands()) {
            Optional<MicrophoneReading.Band> same = at(other, band.centreHz());
            if (same.isPresent()) {
                sum += Math.abs(StrictMath.log(band.ohm() / same.get().ohm()));
                count++;
            }
        }
        return count > 0 && sum / count <= StrictMath.log(1 + OTHER_CABINET);
    }

    /**
     * Holds a reading against the accepted one.
     *
     * @param accepted the accepted reading
     * @param now the reading of now
     * @return the check; empty when noise leaves too few bands, so that nothing can be said
     */
    public static Optional<MicrophoneCheck> of(MicrophoneReading accepted, MicrophoneReading now) {
        List<Double> hz = new ArrayList<>();
        List<Double> changes = new ArrayList<>();
        List<Double> noises = new ArrayList<>();
        for (MicrophoneReading.Band band : now.bands()) {
            Optional<MicrophoneReading.Band> before = at(accepted, band.centreHz());
            before.ifPresent(b -> noises.add(band.noiseDb() - b.noiseDb()));
            // A band that has fallen into the noise is the capsule's loss and counts; one that never stood out does
            // not.
            if (before.filter(MicrophoneCheck::clear).isPresent()) {
                hz.add(band.centreHz());
                changes.add(band.levelDb() - before.get().levelDb());
            }
        }
        long clear = now.bands().stream()
                .filter(b -> clear(b) && hz.contains(b.centreHz()))
                .count();
        if (clear < FEWEST_BANDS) {
            return Optional.empty();
        }
        double gainDb = median(changes);
        double shapeDb = 0;
        double shapeHz = 0;
        for (int from = 0; from + OCTAVE <= changes.size(); from++) {
            double mean = changes.subList(from, from + OCTAVE).stream()
                                    .mapToDouble(Double::doubleValue)
                                    .sum()
                            / OCTAVE
                    - gainDb;
            if (Math.abs(mean) > Math.abs(shapeDb)) {
                shapeDb = mean;
                shapeHz = hz.get(from + OCTAVE / 2);
            }
        }
        double movedM = (now.arrivalS() - accepted.arrivalS()) * SOUND_M_PER_S;
        double placedM = MOVED_LIMIT_M + AIR_SHARE * accepted.arrivalS() * SOUND_M_PER_S;
        double noiseDb = median(noises);
        Fault fault = Math.abs(movedM) > placedM
                ? Fault.MOVED
                : Math.abs(shapeDb) > SHAPE_LIMIT_DB
                        ? Fault.CAPSULE
                        : Math.abs(gainDb) > GAIN_LIMIT_DB
                                ? Fault.GAIN
                                : noiseDb > NOISE_LIMIT_DB ? Fault.NOISE : Fault.NONE;
        return Optional.of(new MicrophoneCheck(
                hundredth(gainDb),
                hundredth(shapeDb),
                shapeHz,
                Math.rint(movedM * 1e4) / 1e4,
                hundredth(noiseDb),
                fault));
    }

    /**
     * Whether the microphone is proved.
     *
     * @return true without a fault
     */
    public boolean passed() {
        return fault == Fault.NONE;
    }

    private static boolean clear(MicrophoneReading.Band band) {
        return band.levelDb() - band.noiseDb() >= CLEAR_DB;
    }

    private static Optional<MicrophoneReading.Band> at(MicrophoneReading reading, double centreHz) {
        return reading.bands().stream().filter(b -> b.centreHz() == centreHz).findFirst();
    }

    private static double median(List<Double> values) {
        double[] sorted = values.stream().mapToDouble(Double::doubleValue).toArray();
        Arrays.sort(sorted);
        int middle = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[middle] : 0.5 * (sorted[middle - 1] + sorted[middle]);
    }

    private static double hundredth(double value) {
        return Math.rint(value * 100) / 100;
    }
}
