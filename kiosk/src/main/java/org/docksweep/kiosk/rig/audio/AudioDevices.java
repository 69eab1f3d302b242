package org.docksweep.kiosk.rig.audio;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.Line;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.TargetDataLine;
import org.docksweep.fleet.Reason;

/** The audio devices of this machine, for a set-up page. */
public final class AudioDevices {
    private static final int LEAST_INPUTS = 2;

    private AudioDevices() {}

    /**
     * A device.
     *
     * @param name name as the settings {@code playMixer} and {@code captureMixer} take it
     * @param output what it plays
     * @param input what it captures
     */
    public record Device(String name, Offer output, Offer input) {
        /**
         * The device in words.
         *
         * @return a sentence for outputs and one for inputs, each only where it has any
         */
        public List<Reason> words() {
            List<Reason> words = new ArrayList<>();
            if (output.channels() > 0) {
                words.add(Reason.of("audio-device-plays", name, Integer.toString(output.channels()), output.formats()));
            }
            if (input.channels() > 0) {
                words.add(
                        Reason.of("audio-device-captures", name, Integer.toString(input.channels()), input.formats()));
            }
            return words;
        }

        /**
         * Whether a rig can play on it.
         *
         * @return true with an output of 16 or more bits
         */
        public boolean playsForRig() {
            return output.channels() > 0 && !output.bits().isEmpty();
        }

        /**
         * Whether a rig can capture from it.
         *
         * @return true with two inputs (voltage and current) of 16 or more bits
         */
        public boolean capturesForRig() {
            return input.channels() >= LEAST_INPUTS && !input.bits().isEmpty();
        }
    }

    /**
     * What a device offers in one direction.
     *
     * @param channels highest number of channels, 0 for none
     * @param bits sample sizes a rig can use, rising
     * @param sampleRatesHz sample rates it names; empty when it takes any or does not say
     */
    public record Offer(int channels, List<Integer> bits, List<Integer> sampleRatesHz) {
        public Offer {
            bits = List.copyOf(bits);
            sampleRatesHz = List.copyOf(sampleRatesHz);
        }

        /** For example {@code 16/24/32 bit, 44100/48000 Hz}. */
        String formats() {
            String rates = sampleRatesHz.isEmpty() ? "" : ", " + joined(sampleRatesHz) + " Hz";
            return joined(bits) + " bit" + rates;
        }

        private static String joined(List<Integer> values) {
            return values.stream().map(String::valueOf).collect(Collectors.joining("/"));
        }
    }

    /**
     * Lists the devices that play or capture samples.
     *
     * @return devices as the system orders them; empty when there is no sound card or no sound system runs
     */
    public static List<Device> list() {
        List<Device> devices = new ArrayList<>();
        for (Mixer.Info info : AudioSystem.getMixerInfo()) {
            Mixer mixer = AudioSystem.getMixer(info);
            Device device = new Device(
                    info.getName(),
                    offer(SourceDataLine.class, mixer.getSourceLineInfo()),
                    offer(TargetDataLine.class, mixer.getTargetLineInfo()));
            if (device.output().channels() > 0 || device.input().channels() > 0) {
                devices.add(device);
            }
        }
        return List.copyOf(devices);
    }

    private static Offer offer(Class<? extends DataLine> kind, Line.Info[] lines) {
        List<AudioFormat> formats = Arrays.stream(lines)
                .filter(line -> line.getLineClass() == kind && line instanceof DataLine.Info)
                .flatMap(line -> Arrays.stream(((DataLine.Info) line).getFormats()))
                .filter(format -> format.getEncoding() == AudioFormat.Encoding.PCM_SIGNED)
                .toList();
        TreeSet<Integer> bits = new TreeSet<>();
        TreeSet<Integer> rates = new TreeSet<>();
        int channels = 0;
        for (AudioFormat format : formats) {
            channels = Math.max(channels, format.getChannels());
            int size = format.getSampleSizeInBits();
            if (size == 16 || size == 24 || size == 32) {
                bits.add(size);
            }
            if (format.getSampleRate() > 0) {
                rates.add(Math.round(format.getSampleRate()));
            }
        }
        return new Offer(channels, List.copyOf(bits), List.copyOf(rates));
    }
}
