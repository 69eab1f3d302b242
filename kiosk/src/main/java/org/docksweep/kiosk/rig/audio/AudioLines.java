package org.docksweep.kiosk.rig.audio;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.Line;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.TargetDataLine;
import org.docksweep.fleet.Reason;
import org.docksweep.sweep.RigException;

/** Opens real lines: the device by its name, the format as the device offers it. */
final class AudioLines implements LineOpener {

    @Override
    public PlayLine openPlay(AudioSettings settings) throws RigException {
        Opened<SourceDataLine> opened =
                open(SourceDataLine.class, settings.playMixer(), settings.playChannels(), settings);
        return new RealPlayLine(opened.line(), SampleCodec.of(opened.format()));
    }

    @Override
    public CaptureLine openCapture(AudioSettings settings) throws RigException {
        Opened<TargetDataLine> opened =
                open(TargetDataLine.class, settings.captureMixer(), settings.captureChannels(), settings);
        return new RealCaptureLine(opened.line(), SampleCodec.of(opened.format()));
    }

    private record Opened<L extends DataLine>(L line, AudioFormat format) {}

    private static <L extends DataLine> Opened<L> open(Class<L> kind, String name, int channels, AudioSettings settings)
            throws RigException {
        Mixer mixer = mixer(kind, name);
        List<AudioFormat> formats = formats(settings.bits(), channels, settings.sampleRateHz());
        Exception last = null;
        for (AudioFormat format : formats) {
            DataLine.Info info = new DataLine.Info(kind, format);
            if (!mixer.isLineSupported(info)) {
                continue;
            }
            try {
                L line = kind.cast(mixer.getLine(info));
                int bytes = format.getFrameSize() * settings.sampleRateHz() * settings.bufferMs() / 1000;
                if (line instanceof SourceDataLine source) {
                    source.open(format, bytes - bytes % format.getFrameSize());
                } else {
                    ((TargetDataLine) line).open(format, bytes - bytes % format.getFrameSize());
                }
                return new Opened<>(line, format);
            } catch (LineUnavailableException | IllegalArgumentException | SecurityException e) {
                // A vanished device answers with IllegalArgumentException.
                last = e;
            }
        }
        String device = mixer.getMixerInfo().getName();
        String wanted = channels + " x " + (settings.bits() == 0 ? "16/24" : settings.bits()) + " bit, "
                + settings.sampleRateHz() + " Hz";
        if (last == null) {
            throw refused(Reason.of("audio-format-not-offered", device, wanted), null);
        }
        throw refused(Reason.of("audio-not-opened", device, wanted, String.valueOf(last.getMessage())), last);
    }

    /** Formats in the order in which they are tried: a longer word holds a shorter one without loss. */
    static List<AudioFormat> formats(int bits, int channels, int sampleRateHz) {
        int[] sizes = bits == 16 ? new int[] {16} : bits == 24 ? new int[] {24, 32} : new int[] {24, 32, 16};
        List<AudioFormat> formats = new ArrayList<>();
        for (int size : sizes) {
            formats.add(new AudioFormat(sampleRateHz, size, channels, true, false));
            formats.add(new AudioFormat(sampleRateHz, size, channels, true, true));
        }
        return formats;
    }

    private static Mixer mixer(Class<? extends DataLine> kind, String name) throws RigException {
        List<Mixer.Info> able = Arrays.stream(AudioSystem.getMixerInfo())
                .filter(info -> offers(info, kind))
                .toList();
        String known = able.stream().map(Mixer.Info::getName).collect(Collectors.joining(", "));
        if (able.isEmpty()) {
            throw refused(Reason.of(kind == SourceDataLine.class ? "audio-no-output" : "audio-no-input"), null);
        }
        if (name.isEmpty()) {
            return AudioSystem.getMixer(able.get(0));
        }
        List<Mixer.Info> named =
                able.stream().filter(info -> info.getName().equals(name)).toList();
        if (named.isEmpty()) {
            String part = name.toLowerCase(Locale.ROOT);
            named = able.stream()
                    .filter(info -> info.getName().toLowerCase(Locale.ROOT).contains(part))
                    .toList();
        }
        if (named.size() != 1) {
            throw refused(
                    Reason.of(named.isEmpty() ? "audio-device-unknown" : "audio-device-ambiguous", name, known), null);
        }
        return AudioSystem.getMixer(named.get(0));
    }

    private static boolean offers(Mixer.Info info, Class<? extends DataLine> kind) {
        try {
            return AudioSystem.getMixer(info).isLineSupported(new Line.Info(kind));
        } catch (IllegalArgumentException | SecurityException e) {
            // It went away between the two calls, or may not be used: then it offers nothing.
            return false;
        }
    }

    private static RigException refused(Reason reason, Exception cause) {
        RigException refused = new RigException(RigException.Cause.REFUSED, reason);
        refused.initCause(cause);
        return refused;
    }

    private record RealPlayLine(SourceDataLine line, SampleCodec codec) implements PlayLine {
        @Override
        public int channels() {
            return line.getFormat().getChannels();
        }

        @Override
        public void start() {
            line.start();
        }

        @Override
        public int write(byte[] bytes) {
            return line.write(bytes, 0, bytes.length);
        }

        @Override
        public void silence() {
            line.stop();
            line.flush();
        }

        @Override
        public void close() {
            line.close();
        }
    }

    private record RealCaptureLine(TargetDataLine line, SampleCodec codec) implements CaptureLine {
        @Override
        public int channels() {
            return line.getFormat().getChannels();
        }

        @Override
        public void start() {
            line.start();
        }

        @Override
        public int read(byte[] bytes) {
            return line.read(bytes, 0, bytes.length);
        }

        @Override
        public void close() {
            line.close();
        }
    }
}
