package org.docksweep.kiosk.rig.audio;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.docksweep.fleet.Require;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.sweep.CaptureChannel;
import org.docksweep.sweep.ChannelRole;

/**
 * Settings of the audio rig. Keys of the settings map; all are optional except the three marked *. Channels are counted
 * from 1, as on the front of an interface.
 *
 * <ul>
 *   <li>{@code id}: name of the rig, written into every recording; {@code audio}
 *   <li>{@code playMixer}, {@code captureMixer}: name of the device as {@link AudioDevices#list()} says it, or a part of
 *       the name that no other has; the first device that can
 *   <li>{@code sampleRateHz}: 44100, 48000 or 96000, for both directions; 48000
 *   <li>{@code bits}: {@code 16}, {@code 24}, or {@code auto} for 24 where offered, else 16; auto
 *   <li>{@code playChannels}, {@code playChannel}: channels of the output, 1 to 8, and the one with the amplifier; 2, 1
 *   <li>{@code voltsPerFullScale} *: volts at the amplifier's output for digital full scale 1.0, up to 200
 *   <li>{@code linePlayChannel}, {@code lineVoltsPerFullScale}: the output without amplifier for line inputs; without
 *       these, line inputs are fed by the amplifier
 *   <li>{@code captureChannels}: channels of the input, 2 to 4; 2
 *   <li>{@code voltageChannel}, {@code currentChannel}, {@code microphoneChannel}, {@code farMicrophoneChannel}: which is
 *       which, 0 for none; 1, 2, 0, 0
 *   <li>{@code voltageFullScale} *, {@code currentFullScale} *: volts and amperes at full scale 1.0 of the input
 *   <li>{@code microphoneFullScale}, {@code farMicrophoneFullScale}: pascals at full scale; needed with these channels
 *   <li>{@code bufferMs}: buffer of both lines, 20 to 500; 100
 *   <li>{@code leadInS}: silence before everything, because a stream is torn at its start, 0.25 to 2; 0.3
 *   <li>{@code mostAmperes}, {@code mostWatts}: what the rig's parts bear, in amperes rms and watts; 10, 50
 *   <li>{@code leastLoadOhm}: what a measured voltage may drive at least, with sense resistor and lead; 0.2
 *   <li>{@code ambientCelsius}: air at the dock, -30 to 60; not known
 * </ul>
 *
 * @param id name of the rig
 * @param playMixer device to play on, empty for the first
 * @param captureMixer device to capture from, empty for the first
 * @param sampleRateHz samples per second
 * @param bits 16, 24, or 0 for the best offered
 * @param playChannels channels of the output
 * @param output the output with the amplifier
 * @param lineOutput the output for line inputs
 * @param captureChannels channels of the input
 * @param inputs captured channels and their scale, by role
 * @param bufferMs buffer of both lines in milliseconds
 * @param leadInS silence before everything, in seconds
 * @param mostAmperes highest current in amperes rms
 * @param mostWatts highest power in watts
 * @param leastLoadOhm lowest load in ohm
 * @param ambientCelsius air temperature, or null when not known
 */
public record AudioSettings(
        String id,
        String playMixer,
        String captureMixer,
        int sampleRateHz,
        int bits,
        int playChannels,
        Output output,
        Output lineOutput,
        int captureChannels,
        Map<ChannelRole, Input> inputs,
        int bufferMs,
        double leadInS,
        double mostAmperes,
        double mostWatts,
        double leastLoadOhm,
        Double ambientCelsius) {

    private static final Set<Integer> SAMPLE_RATES_HZ = Set.of(44_100, 48_000, 96_000);

    /**
     * An output.
     *
     * @param channel channel from 1
     * @param voltsPerFullScale volts for digital full scale, above 0, up to 200
     */
    public record Output(int channel, double voltsPerFullScale) {
        public Output {
            Require.inRange("play channel", channel, 1, 8);
            Require.positive("volts of the output at full scale", voltsPerFullScale);
            Require.inRange("volts of the output at full scale", voltsPerFullScale, 0, 200);
        }
    }

    /**
     * An input.
     *
     * @param channel channel from 1
     * @param unitsPerFullScale volts, amperes or pascals for digital full scale, above 0
     */
    public record Input(int channel, double unitsPerFullScale) {
        public Input {
            Require.inRange("capture channel", channel, 1, 4);
            Require.positive("units of the input at full scale", unitsPerFullScale);
        }
    }

    public AudioSettings {
        Require.text("id", id);
        if (playMixer == null || captureMixer == null) {
            throw new IllegalArgumentException(
                    "playMixer and captureMixer must be names, or empty for the first device");
        }
        if (!SAMPLE_RATES_HZ.contains(sampleRateHz)) {
            throw new IllegalArgumentException(
                    "sampleRateHz must be one of " + new TreeSet<>(SAMPLE_RATES_HZ) + ", but is " + sampleRateHz);
        }
        if (bits != 0 && bits != 16 && bits != 24) {
            throw new IllegalArgumentException("bits must be 16, 24 or auto, but is " + bits);
        }
        Require.inRange("playChannels", playChannels, 1, 8);
        checkChannel("playChannel", output.channel(), playChannels);
        checkChannel("linePlayChannel", lineOutput.channel(), playChannels);
        Require.inRange("captureChannels", captureChannels, 2, 4);
        inputs = Map.copyOf(inputs);
        for (ChannelRole role : List.of(ChannelRole.VOLTAGE, ChannelRole.CURRENT)) {
            if (!inputs.containsKey(role)) {
                throw new IllegalArgumentException("the " + role + " channel is missing: the level cannot be watched");
            }
        }
        for (Map.Entry<ChannelRole, Input> input : inputs.entrySet()) {
            checkChannel(input.getKey() + " channel", input.getValue().channel(), captureChannels);
        }
        if (inputs.values().stream().map(Input::channel).distinct().count() < inputs.size()) {
            throw new IllegalArgumentException("two roles share a capture channel: " + inputs);
        }
        Require.inRange("bufferMs", bufferMs, 20, 500);
        Require.inRange("leadInS", leadInS, 0.25, 2);
        Require.positive("mostAmperes", mostAmperes);
        Require.positive("mostWatts", mostWatts);
        Require.positive("leastLoadOhm", leastLoadOhm);
        if (ambientCelsius != null) {
            Require.inRange("ambientCelsius", ambientCelsius, -30, 60);
        }
    }

    private static void checkChannel(String name, int channel, int channels) {
        if (channel > channels) {
            throw new IllegalArgumentException(name + " is " + channel + ", but only " + channels
                    + " channels are opened; open more, or choose another");
        }
    }

    /**
     * Reads a settings map.
     *
     * @param settings keys and values as above
     * @return the settings
     * @throws IllegalArgumentException on an unknown or missing key or a value that cannot be read; names it
     */
    public static AudioSettings of(Map<String, String> settings) {
        SettingsReader read = new SettingsReader(settings);
        Output output = new Output(read.whole("playChannel", 1), read.number("voltsPerFullScale"));
        Map<ChannelRole, Input> inputs = new EnumMap<>(ChannelRole.class);
        addInput(inputs, read, ChannelRole.VOLTAGE, "voltage", 1);
        addInput(inputs, read, ChannelRole.CURRENT, "current", 2);
        addInput(inputs, read, ChannelRole.MICROPHONE, "microphone", 0);
        addInput(inputs, read, ChannelRole.FAR_MICROPHONE, "farMicrophone", 0);
        AudioSettings made = new AudioSettings(
                read.text("id", "audio"),
                read.text("playMixer", ""),
                read.text("captureMixer", ""),
                read.whole("sampleRateHz", 48_000),
                read.text("bits", "auto").equals("auto") ? 0 : read.whole("bits", 0),
                read.whole("playChannels", 2),
                output,
                new Output(
                        read.whole("linePlayChannel", output.channel()),
                        read.number("lineVoltsPerFullScale", output.voltsPerFullScale())),
                read.whole("captureChannels", 2),
                inputs,
                read.whole("bufferMs", 100),
                read.number("leadInS", 0.3),
                read.number("mostAmperes", 10),
                read.number("mostWatts", 50),
                read.number("leastLoadOhm", 0.2),
                read.has("ambientCelsius") ? Double.valueOf(read.number("ambientCelsius")) : null);
        read.refuseOthers();
        return made;
    }

    private static void addInput(
            Map<ChannelRole, Input> inputs, SettingsReader read, ChannelRole role, String name, int otherwise) {
        int channel = read.whole(name + "Channel", otherwise);
        if (channel != 0) {
            inputs.put(role, new Input(channel, read.number(name + "FullScale")));
        } else {
            // A scale without a channel is known, but not used.
            read.has(name + "FullScale");
        }
    }

    /**
     * The output for a kind of test point.
     *
     * @param kind what is connected
     * @return the output
     */
    Output outputFor(TestPointKind kind) {
        return kind == TestPointKind.LINE_INPUT ? lineOutput : output;
    }

    /**
     * The captured channels in the order of their roles.
     *
     * @return channels with their scale
     */
    List<CaptureChannel> channels() {
        return roles().stream()
                .map(role -> new CaptureChannel(role, inputs.get(role).unitsPerFullScale()))
                .toList();
    }

    /** Roles in the order of {@link #channels()}. */
    List<ChannelRole> roles() {
        return inputs.keySet().stream().sorted().toList();
    }

    int leadInFrames() {
        return (int) Math.round(leadInS * sampleRateHz);
    }
}
