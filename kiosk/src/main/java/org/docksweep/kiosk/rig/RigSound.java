package org.docksweep.kiosk.rig;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.docksweep.acoustic.MicrophoneCheck;

/**
 * The microphone's checks since its sound was accepted.
 *
 * @param accepted what was accepted; empty when nothing was
 * @param checked newest check after that; empty when there is none
 * @param charts gain in dB, way of the sound in metres, shape of the response in dB; empty before the first check
 */
public record RigSound(
        Optional<RigEntry.SoundAccepted> accepted, Optional<RigEntry.SoundChecked> checked, List<CheckChart> charts) {
    /** Name of the chart of the gain. */
    public static final String GAIN = "gain";

    /** Name of the chart of the way of the sound. */
    public static final String WAY = "way";

    /** Name of the chart of the capsule. */
    public static final String CAPSULE = "capsule";

    /** A tenth of the fixed limit at three standard deviations is of no consequence, as with the check standards. */
    private static final double LEAST_SHARE = 0.1 / 3;

    /** One sample at 48 kHz is 7 mm of way; the arrival is known no better. */
    private static final double LEAST_WAY_M = 0.007;

    /** Nothing was ever accepted. */
    public static final RigSound NONE = new RigSound(Optional.empty(), Optional.empty(), List.of());

    public RigSound {
        charts = List.copyOf(charts);
    }

    /**
     * Reads a book.
     *
     * @param book the book
     * @return the checks since the sound in force was accepted
     */
    public static RigSound of(RigBook book) {
        Optional<RigEntry.SoundAccepted> accepted = book.soundInForce();
        if (accepted.isEmpty()) {
            return NONE;
        }
        List<RigEntry.SoundChecked> checks = new ArrayList<>();
        for (RigEntry entry : book.entries()) {
            if (entry == accepted.get()) {
                checks.clear();
            } else if (entry instanceof RigEntry.SoundChecked check) {
                checks.add(check);
            }
        }
        Optional<RigEntry.SoundChecked> newest =
                checks.isEmpty() ? Optional.empty() : Optional.of(checks.get(checks.size() - 1));
        // Failed checks are no history to hold anything against; the newest is shown whatever it says.
        List<RigEntry.SoundChecked> history = checks.stream()
                .filter(c ->
                        c.check().passed() || c == newest.get() && c.check().fault() != MicrophoneCheck.Fault.UNHEARD)
                .toList();
        List<CheckChart> charts = history.isEmpty()
                ? List.of()
                : List.of(
                        chart(GAIN, history, MicrophoneCheck::gainDb, LEAST_SHARE * MicrophoneCheck.GAIN_LIMIT_DB),
                        chart(WAY, history, MicrophoneCheck::movedM, LEAST_WAY_M),
                        chart(
                                CAPSULE,
                                history,
                                MicrophoneCheck::shapeDb,
                                LEAST_SHARE * MicrophoneCheck.SHAPE_LIMIT_DB));
        return new RigSound(accepted, newest, charts);
    }

    private static CheckChart chart(
            String name,
            List<RigEntry.SoundChecked> history,
            ToDoubleFunction<MicrophoneCheck> value,
            double leastDeviation) {
        List<Instant> at = history.stream().map(RigEntry.SoundChecked::at).toList();
        List<Double> values =
                history.stream().map(c -> value.applyAsDouble(c.check())).toList();
        return CheckChart.of(name, at, values, leastDeviation);
    }
}
