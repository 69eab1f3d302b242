package org.docksweep.kiosk.night;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.kiosk.spool.Wire;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CaptureHeader;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlan;

/** The kiosk's side of {@link RigProcess}: its memory and work are not the kiosk's. */
final class RigElsewhere implements PracticeRig {
    private final Process process;
    private final DataInputStream in;
    private final DataOutputStream out;
    private final String id;
    private final int sampleRateHz;
    private volatile boolean playing;

    private RigElsewhere(Process process) throws IOException {
        this.process = process;
        this.in = new DataInputStream(new BufferedInputStream(process.getInputStream()));
        this.out = new DataOutputStream(new BufferedOutputStream(process.getOutputStream()));
        this.id = text();
        this.sampleRateHz = in.readInt();
    }

    /** Starts the rig of a night. */
    static RigElsewhere start(NightOptions options) throws IOException {
        return new RigElsewhere(new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:+UseSerialGC",
                        "-XX:TieredStopAtLevel=1",
                        "-Djava.awt.headless=true",
                        "-cp",
                        System.getProperty("java.class.path"),
                        RigProcess.class.getName(),
                        Long.toString(options.seed()),
                        Boolean.toString(options.realTime()))
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start());
    }

    @Override
    public String id() {
        return id;
    }

    @Override
    public int sampleRateHz() {
        return sampleRateHz;
    }

    @Override
    public void plug(AssetTag label, String testPointCode) {
        tell(RigProcess.PLUG, label.value(), testPointCode);
    }

    @Override
    public void plugDriver(AssetTag label, String positionCode) {
        tell(RigProcess.PLUG_DRIVER, label.value(), positionCode);
    }

    @Override
    public void repair(AssetTag label) {
        tell(RigProcess.REPAIR, label.value());
    }

    @Override
    public void unplug() {
        tell(RigProcess.UNPLUG);
    }

    private synchronized void tell(int command, String... words) {
        try {
            send(command, words);
            if (in.read() != RigProcess.DONE) {
                throw new IllegalArgumentException(text());
            }
        } catch (IOException e) {
            throw new UncheckedIOException("the rig's process is gone", e);
        }
    }

    @Override
    public synchronized Capture play(SweepPlan plan, TestPointKind kind, ProgressListener listener)
            throws RigException {
        playing = true;
        try {
            send(RigProcess.PLAY, Wire.json().writeValueAsString(plan), kind.name());
            int answer = in.read();
            while (answer == RigProcess.PROGRESS) {
                listener.progressed(in.readDouble());
                answer = in.read();
            }
            if (answer != RigProcess.CAPTURED) {
                throw new IllegalStateException(text());
            }
            CaptureHeader header = Wire.json().readValue(text(), CaptureHeader.class);
            return new Capture(header, samples(header.channels().size(), in.readInt()));
        } catch (IOException e) {
            throw new RigException(RigException.Cause.DEVICE_LOST, Reason.of("rig-stopped"));
        } finally {
            playing = false;
        }
    }

    private float[][] samples(int channels, int frames) throws IOException {
        float[][] samples = new float[channels][frames];
        ByteBuffer part = ByteBuffer.allocate(Float.BYTES * RigProcess.PART_FLOATS);
        for (float[] channel : samples) {
            for (int from = 0; from < frames; from += RigProcess.PART_FLOATS) {
                int count = Math.min(RigProcess.PART_FLOATS, frames - from);
                in.readFully(part.array(), 0, Float.BYTES * count);
                part.asFloatBuffer().get(channel, from, count);
            }
        }
        return samples;
    }

    /** A night that is walked by itself never stops a sweep but at its end. */
    @Override
    public void stop() {
        if (playing) {
            process.destroy();
        }
    }

    @Override
    public void close() {
        process.destroy();
    }

    private void send(int command, String... words) throws IOException {
        out.write(command);
        for (String word : words) {
            byte[] bytes = word.getBytes(StandardCharsets.UTF_8);
            out.writeInt(bytes.length);
            out.write(bytes);
        }
        out.flush();
    }

    private String text() throws IOException {
        return new String(in.readNBytes(in.readInt()), StandardCharsets.UTF_8);
    }
}
