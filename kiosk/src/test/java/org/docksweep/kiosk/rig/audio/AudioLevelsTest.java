package org.docksweep.kiosk.rig.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.docksweep.kiosk.rig.ChannelLevel;
import org.docksweep.sweep.RigException;
import org.junit.jupiter.api.Test;

class AudioLevelsTest {
    private static final int DELAY = 960;

    private static AudioSettings settings(double voltsPerFullScale) {
        Map<String, String> settings = new HashMap<>(AudioSettingsTest.LEAST);
        settings.put("voltsPerFullScale", Double.toString(voltsPerFullScale));
        return AudioSettings.of(settings);
    }

    /** Levels of so many tenths of a second. */
    private static List<List<ChannelLevel>> hear(AudioSettings settings, FakeSound sound, int times)
            throws RigException {
        List<List<ChannelLevel>> heard = new ArrayList<>();
        new AudioLevels(settings, true, sound).listen(() -> heard.size() >= times, heard::add);
        return heard;
    }

    @Test
    void showsTheToneOnEveryInput() throws RigException {
        List<List<ChannelLevel>> heard = hear(settings(10), new FakeSound(DELAY, 1), 5);

        List<ChannelLevel> last = heard.get(4);
        assertThat(last).extracting(ChannelLevel::name).containsExactly("1", "2");
        // 0.01 of full scale is -40 dB.
        assertThat(last).allSatisfy(l -> {
            assertThat(l.peakDbfs()).isCloseTo(-40, within(0.05));
            assertThat(l.clipped()).isFalse();
        });
    }

    @Test
    void playsNoMoreThanTheProbeByTheVoltsEntered() throws RigException {
        // 0.1 V rms of 100 V at full scale: 0.1414 / 100.
        List<List<ChannelLevel>> heard = hear(settings(100), new FakeSound(DELAY, 1), 5);

        assertThat(heard.get(4).get(0).peakDbfs()).isCloseTo(20 * Math.log10(0.1 * Math.sqrt(2) / 100), within(0.1));
    }

    @Test
    void isSilentAndClosedWhenItIsStopped() throws RigException, InterruptedException {
        FakeSound sound = new FakeSound(DELAY, 1);
        hear(settings(10), sound, 2);

        assertThat(sound.silenced()).isTrue();
        assertThat(sound.closes()).isTrue();
        assertThat(sound.otherChannelUsed()).isFalse();
    }

    @Test
    void stopsTheToneWhenAnInputClips() throws InterruptedException {
        FakeSound sound = new FakeSound(DELAY, 200);

        assertThatExceptionOfType(RigException.class)
                .isThrownBy(() -> hear(settings(10), sound, 50))
                .satisfies(e -> assertThat(e.reason().key()).isEqualTo("rigpage-tone-clips"));
        assertThat(sound.silenced()).isTrue();
        assertThat(sound.closes()).isTrue();
    }

    @Test
    void saysThatTheDeviceIsLost() throws InterruptedException {
        FakeSound sound = new FakeSound(DELAY, 1);
        sound.loseInputAt = 24_000;

        assertThatExceptionOfType(RigException.class)
                .isThrownBy(() -> hear(settings(10), sound, 50))
                .satisfies(e -> assertThat(e.kind()).isEqualTo(RigException.Cause.DEVICE_LOST));
        assertThat(sound.closes()).isTrue();
    }
}
