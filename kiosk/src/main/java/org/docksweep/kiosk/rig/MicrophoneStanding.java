package org.docksweep.kiosk.rig;

import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import org.docksweep.fleet.Reason;

/**
 * Whether the microphone is proved, by the book of its rig: the sound of a known cabinet was accepted, and a check of this shift
 * agreed with it. Accepting counts as a check: there is nothing else to hold the microphone against.
 *
 * @param doubt why it is not proved, and what to do; empty when it is
 * @param strip what the strip says; empty when there is nothing to say
 */
record MicrophoneStanding(Optional<Reason> doubt, Optional<Reason> strip) {
    /**
     * Reads a book.
     *
     * @param book book of the rig
     * @param now time
     * @param time how times are written
     * @return the standing
     */
    static MicrophoneStanding of(RigBook book, Instant now, DateTimeFormatter time) {
        Optional<RigEntry.SoundAccepted> accepted = book.soundInForce();
        if (accepted.isEmpty()) {
            // A rig that has no microphone has nothing to be checked, but neither has it anything proved.
            boolean there = hasMicrophone(book);
            return new MicrophoneStanding(
                    Optional.of(Reason.of("mic-not-accepted")),
                    there ? Optional.of(Reason.of("dock-mic-not-accepted")) : Optional.empty());
        }
        Optional<RigEntry.SoundChecked> newest = last(book.entries(), accepted.get());
        if (newest.filter(check -> !check.check().passed()).isPresent()) {
            return doubted(
                    "mic-failed", "dock-mic-failed", time.format(newest.get().at()));
        }
        Instant proved =
                newest.map(RigEntry.SoundChecked::at).orElse(accepted.get().at());
        Duration age = Duration.between(proved, now);
        if (age.compareTo(RigStandings.SHIFT) > 0 || age.compareTo(RigStandings.CLOCK_SLACK.negated()) < 0) {
            return doubted("mic-old", "dock-mic-old", time.format(proved));
        }
        boolean drifts = RigSound.of(book).charts().stream().anyMatch(CheckChart::signalsNow);
        return new MicrophoneStanding(
                Optional.empty(),
                drifts ? Optional.of(Reason.of("dock-mic-drifts", time.format(proved))) : Optional.empty());
    }

    private static MicrophoneStanding doubted(String doubt, String strip, String at) {
        return new MicrophoneStanding(Optional.of(Reason.of(doubt, at)), Optional.of(Reason.of(strip, at)));
    }

    private static boolean hasMicrophone(RigBook book) {
        return book.newest(RigEntry.SetUp.class)
                .map(s -> new RigSetUp(s.values()))
                .filter(s ->
                        List.of(SetUpField.INPUT_1, SetUpField.INPUT_2, SetUpField.INPUT_3, SetUpField.INPUT_4).stream()
                                .anyMatch(input -> s.value(input).equals("microphone")))
                .isPresent();
    }

    /** The newest check after a reading was accepted. */
    private static Optional<RigEntry.SoundChecked> last(List<RigEntry> entries, RigEntry.SoundAccepted accepted) {
        RigEntry.SoundChecked newest = null;
        for (RigEntry entry : entries) {
            if (entry == accepted) {
                newest = null;
            } else if (entry instanceof RigEntry.SoundChecked check) {
                newest = check;
            }
        }
        return Optional.ofNullable(newest);
    }
}
