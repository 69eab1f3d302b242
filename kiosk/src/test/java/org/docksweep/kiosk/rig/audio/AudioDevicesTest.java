package org.docksweep.kiosk.rig.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import org.docksweep.fleet.Reasons;
import org.docksweep.kiosk.rig.audio.AudioDevices.Device;
import org.docksweep.kiosk.rig.audio.AudioDevices.Offer;
import org.junit.jupiter.api.Test;

class AudioDevicesTest {
    private static final Offer NONE = new Offer(0, List.of(), List.of());

    private static List<String> words(Device device) {
        return device.words().stream()
                .map(reason -> Reasons.text(reason, Locale.ENGLISH))
                .toList();
    }

    @Test
    void saysWhatADeviceOffers() {
        Device device = new Device(
                "Harbour 4",
                new Offer(2, List.of(16, 24), List.of(44_100, 48_000)),
                new Offer(4, List.of(24), List.of()));

        assertThat(words(device))
                .containsExactly("Harbour 4: 2 outputs, 16/24 bit, 44100/48000 Hz", "Harbour 4: 4 inputs, 24 bit");
        assertThat(device.playsForRig()).isTrue();
        assertThat(device.capturesForRig()).isTrue();
    }

    @Test
    void saysNothingOfADirectionThatIsNotThere() {
        Device microphone = new Device("Pier", NONE, new Offer(1, List.of(16), List.of()));

        assertThat(words(microphone)).containsExactly("Pier: 1 inputs, 16 bit");
        assertThat(microphone.playsForRig()).isFalse();
        assertThat(microphone.capturesForRig())
                .as("voltage and current need two")
                .isFalse();
    }

    @Test
    void listsWithoutASoundCard() {
        assertThat(AudioDevices.list())
                .allSatisfy(device -> assertThat(device.words()).isNotEmpty());
    }
}
