package org.docksweep.kiosk.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.docksweep.fleet.Reasons;
import org.docksweep.kiosk.rig.audio.AudioDevices;
import org.docksweep.kiosk.rig.audio.AudioSettings;
import org.docksweep.sweep.ChannelRole;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RigSetUpTest {
    private static final List<AudioDevices.Device> DEVICES = List.of(
            new AudioDevices.Device(
                    "Interface",
                    new AudioDevices.Offer(2, List.of(16, 24), List.of(44100, 48000)),
                    new AudioDevices.Offer(4, List.of(16, 24), List.of(44100, 48000))),
            new AudioDevices.Device(
                    "Webcam",
                    new AudioDevices.Offer(0, List.of(), List.of()),
                    new AudioDevices.Offer(2, List.of(16), List.of())));

    private static final RigSetUp GOOD = new RigSetUp(Map.of())
            .with(SetUpField.PLAY_DEVICE, "Interface")
            .with(SetUpField.CAPTURE_DEVICE, "Interface")
            .with(SetUpField.OUTPUT_VOLTS, "10")
            .with(SetUpField.VOLTAGE_FULL_SCALE, "20")
            .with(SetUpField.SENSE_OHM, "0.47")
            .with(SetUpField.SENSE_VOLTS, "1,5");

    @Test
    void turnsFieldsIntoSettingsOfTheRig() {
        assertThat(GOOD.problems(DEVICES)).isEmpty();
        AudioSettings settings = AudioSettings.of(GOOD.with(SetUpField.INPUT_1, "unused")
                .with(SetUpField.INPUT_3, "voltage")
                .rigSettings(DEVICES));

        assertThat(settings.inputs().get(ChannelRole.VOLTAGE)).isEqualTo(new AudioSettings.Input(3, 20));
        // 1.5 V across 0.47 ohm.
        assertThat(settings.inputs().get(ChannelRole.CURRENT).unitsPerFullScale())
                .isCloseTo(3.1915, within(1e-4));
        assertThat(settings.captureChannels()).isEqualTo(4);
    }

    @ParameterizedTest
    @CsvSource({
        "PLAY_DEVICE, Gone, PLAY_DEVICE, rigpage-device-gone",
        "CAPTURE_DEVICE, Webcam, CAPTURE_DEVICE, rigpage-two-clocks",
        "SAMPLE_RATE, 96000, SAMPLE_RATE, rigpage-rate-not-offered",
        "OUTPUT, 3, OUTPUT, rigpage-output-missing",
        "INPUT_2, voltage, INPUT_2, rigpage-role-twice-voltage",
        "INPUT_3, current, INPUT_3, rigpage-role-twice-current",
        "INPUT_1, unused, INPUT_1, rigpage-role-missing-voltage",
        "INPUT_2, unused, INPUT_2, rigpage-role-missing-current",
        "INPUT_3, microphone, MICROPHONE_PASCALS, rigpage-number-missing",
        "OUTPUT_VOLTS, '', OUTPUT_VOLTS, rigpage-number-missing",
        "OUTPUT_VOLTS, ten, OUTPUT_VOLTS, rigpage-not-a-number",
        "OUTPUT_VOLTS, NaN, OUTPUT_VOLTS, rigpage-number-range",
        "OUTPUT_VOLTS, 500, OUTPUT_VOLTS, rigpage-number-range",
        "SENSE_OHM, 0, SENSE_OHM, rigpage-number-range",
        "CHECK_OHM, 10.2, CHECK_OHM, rigpage-check-is-load",
    })
    void saysInWordsWhatIsWrong(SetUpField field, String value, SetUpField marked, String key) {
        List<RigSetUp.Problem> problems = GOOD.with(field, value).problems(DEVICES);

        assertThat(problems).anySatisfy(p -> {
            assertThat(p.field()).isEqualTo(marked);
            assertThat(p.words().key()).isEqualTo(key);
        });
        for (RigSetUp.Problem problem : problems) {
            for (Locale locale : new Locale[] {Locale.ENGLISH, Locale.GERMAN}) {
                assertThat(Reasons.text(problem.words(), locale)).isNotBlank().doesNotContain("{");
            }
        }
    }

    @Test
    void saysThatThereIsNoInterface() {
        assertThat(GOOD.problems(List.of()))
                .extracting(p -> p.words().key())
                .contains("rigpage-no-output", "rigpage-no-input");
    }

    @Test
    void refusesAFourthInputOfADeviceWithTwo() {
        RigSetUp webcam = GOOD.with(SetUpField.CAPTURE_DEVICE, "Webcam").with(SetUpField.INPUT_4, "microphone");

        assertThat(webcam.problems(DEVICES)).anySatisfy(p -> {
            assertThat(p.field()).isEqualTo(SetUpField.INPUT_4);
            assertThat(p.words().key()).isEqualTo("rigpage-input-missing");
        });
    }

    @Test
    void understandsTheSettingsOfACommandLine() {
        RigSetUp setUp = RigSetUp.ofSettings(Map.of(
                "voltsPerFullScale", "20",
                "voltageFullScale", "40",
                "currentFullScale", "5",
                "voltageChannel", "4",
                "bufferMs", "200"));
        AudioSettings settings = AudioSettings.of(setUp.rigSettings(DEVICES));

        assertThat(settings.inputs().get(ChannelRole.VOLTAGE)).isEqualTo(new AudioSettings.Input(4, 40));
        assertThat(settings.inputs().get(ChannelRole.CURRENT)).isEqualTo(new AudioSettings.Input(2, 5));
        assertThat(settings.bufferMs()).isEqualTo(200);
    }

    @Test
    void goesRoundTheChoices() {
        assertThat(GOOD.chosen(SetUpField.BITS, 1, DEVICES).value(SetUpField.BITS))
                .isEqualTo("16");
        assertThat(GOOD.chosen(SetUpField.BITS, -1, DEVICES).value(SetUpField.BITS))
                .isEqualTo("24");
        // A device that is gone gives way to the first choice.
        assertThat(GOOD.with(SetUpField.PLAY_DEVICE, "Gone")
                        .chosen(SetUpField.PLAY_DEVICE, 1, DEVICES)
                        .value(SetUpField.PLAY_DEVICE))
                .isEmpty();
    }
}
