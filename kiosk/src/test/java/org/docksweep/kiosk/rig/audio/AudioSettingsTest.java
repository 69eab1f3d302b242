package org.docksweep.kiosk.rig.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.kiosk.rig.Rigs;
import org.docksweep.sweep.CaptureChannel;
import org.docksweep.sweep.ChannelRole;
import org.docksweep.sweep.Rig;
import org.docksweep.sweep.RigException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AudioSettingsTest {
    static final Map<String, String> LEAST =
            Map.of("voltsPerFullScale", "20", "voltageFullScale", "40", "currentFullScale", "5");

    private static AudioSettings with(String... more) {
        Map<String, String> settings = new HashMap<>(LEAST);
        for (int i = 0; i < more.length; i += 2) {
            settings.put(more[i], more[i + 1]);
        }
        return AudioSettings.of(settings);
    }

    @Test
    void needsNothingButTheScales() {
        AudioSettings settings = with();

        assertThat(settings.sampleRateHz()).isEqualTo(48_000);
        assertThat(settings.bufferMs()).isEqualTo(100);
        assertThat(settings.leadInFrames()).isEqualTo(14_400);
        assertThat(settings.ambientCelsius()).isNull();
        assertThat(settings.channels())
                .isEqualTo(List.of(
                        new CaptureChannel(ChannelRole.VOLTAGE, 40), new CaptureChannel(ChannelRole.CURRENT, 5)));
    }

    @Test
    void feedsLineInputsFromAnOutputOfTheirOwn() {
        AudioSettings settings = with("linePlayChannel", "2", "lineVoltsPerFullScale", "3.5");

        assertThat(settings.outputFor(TestPointKind.LINE_INPUT)).isEqualTo(new AudioSettings.Output(2, 3.5));
        assertThat(settings.outputFor(TestPointKind.TERMINALS)).isEqualTo(new AudioSettings.Output(1, 20));
        assertThat(with().outputFor(TestPointKind.LINE_INPUT)).isEqualTo(new AudioSettings.Output(1, 20));
    }

    @ParameterizedTest
    @CsvSource({
        "voltsPerFullScale, 0",
        "voltsPerFullScale, -1",
        "voltsPerFullScale, NaN",
        "voltsPerFullScale, 201",
        "voltsPerFullScale, twenty",
        "sampleRateHz, 22050",
        "sampleRateHz, 48000.5",
        "bits, 20",
        "bits, x",
        "playChannels, 0",
        "playChannels, 9",
        "playChannel, 3",
        "linePlayChannel, 3",
        "captureChannels, 1",
        "captureChannels, 5",
        "voltageChannel, 0",
        "voltageChannel, 2",
        "currentChannel, 0",
        "currentChannel, 3",
        "microphoneChannel, 3",
        "farMicrophoneChannel, 4",
        "voltageFullScale, Infinity",
        "bufferMs, 19",
        "bufferMs, 501",
        "leadInS, 0.24",
        "leadInS, NaN",
        "mostAmperes, 0",
        "mostWatts, 0",
        "leastLoadOhm, 0",
        "ambientCelsius, 61",
        "volume, 11"
    })
    void refusesWhatIsWrong(String key, String value) {
        assertThatIllegalArgumentException().isThrownBy(() -> with(key, value));
    }

    @Test
    void namesWhatIsMissing() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> AudioSettings.of(Map.of()))
                .withMessageContaining("voltsPerFullScale");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> with("captureChannels", "3", "microphoneChannel", "3"))
                .withMessageContaining("microphoneFullScale");
    }

    @Test
    void isFoundByItsName() throws RigException {
        Map<String, String> settings = new HashMap<>(LEAST);
        settings.put("id", "dock-1");

        try (Rig rig = Rigs.open("audio", settings)) {
            assertThat(rig.id()).isEqualTo("dock-1");
        }
        assertThatExceptionOfType(RigException.class)
                .isThrownBy(() -> Rigs.open("audio", Map.of("volume", "11")))
                .satisfies(e -> assertThat(e.reason().key()).isEqualTo("rig-settings-wrong"));
    }
}
