package org.docksweep.kiosk.tones;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.docksweep.kiosk.screens.SampleStates;
import org.junit.jupiter.api.Test;

class AnswerTonesTest {
    private static final int RATE_HZ = 48_000;

    private final List<String> heard = new ArrayList<>();
    private boolean allowed = true;
    private final AnswerTones tones = new AnswerTones(
            new Loudspeaker() {
                @Override
                public void play(AnswerTone tone) {
                    heard.add(tone.name());
                }

                @Override
                public void silence() {
                    heard.add("silence");
                }
            },
            () -> allowed);

    @Test
    void soundsEachAnswerOnceAndIsSilentBeforeTheNextSweep() {
        tones.changed(SampleStates.named("sweep"));
        tones.changed(SampleStates.named("answer-pass"));
        tones.changed(SampleStates.named("answer-pass"));
        tones.changed(SampleStates.named("ready"));
        tones.changed(SampleStates.named("look"));
        tones.changed(SampleStates.named("sweep"));
        tones.changed(SampleStates.named("answer-fail"));
        tones.changed(SampleStates.named("answer-sweep-again"));
        assertThat(heard).containsExactly("silence", "SHELF", "silence", "AWAY", "HANDS");
    }

    /** Beats can be counted where pitch is lost: 1 run of sound, 3 with gaps, and 6 changes of pitch. */
    @Test
    void differInRhythm() {
        assertThat(runs(AnswerTone.SHELF)).isEqualTo(1);
        assertThat(runs(AnswerTone.AWAY)).isEqualTo(3);
        assertThat(runs(AnswerTone.HANDS)).isEqualTo(1);
        assertThat(AnswerTone.HANDS.samples(RATE_HZ).length).isLessThan(AnswerTone.AWAY.samples(RATE_HZ).length / 2);
    }

    @Test
    void stayBelowTheirPeakAndAreOverWithinASecondAndAHalf() {
        for (AnswerTone tone : AnswerTone.values()) {
            double[] samples = tone.samples(RATE_HZ);
            assertThat(samples.length).isBetween(RATE_HZ / 4, 3 * RATE_HZ / 2);
            assertThat(Arrays.stream(samples).map(Math::abs).max().orElseThrow())
                    .isBetween(0.9 * AnswerTone.PEAK, AnswerTone.PEAK);
        }
    }

    @Test
    void areNotPlayedWhileTheRigHasTheOutput() {
        allowed = false;
        tones.changed(SampleStates.named("answer-fail"));
        assertThat(heard).isEmpty();
    }

    @Test
    void needAnOutputThatIsThere() {
        assertThatThrownBy(() -> SoundOutput.open("No such output"))
                .hasMessageContaining("there is no output \"No such output\"")
                .hasMessageContaining("this computer has");
    }

    /** Runs of sound between gaps of 50 ms and more. */
    private static int runs(AnswerTone tone) {
        int runs = 0;
        int quiet = RATE_HZ;
        for (double sample : tone.samples(RATE_HZ)) {
            if (Math.abs(sample) > 0.01 * AnswerTone.PEAK) {
                runs += quiet > RATE_HZ / 20 ? 1 : 0;
                quiet = 0;
            } else {
                quiet++;
            }
        }
        return runs;
    }
}
