package org.docksweep.kiosk.night;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.kiosk.spool.Wire;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CaptureChannel;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlan;

/**
 * The virtual rig at the dock in a process of its own, told by its standard input and answering on its standard output, as an interface
 * is outside of the kiosk. Arguments: seed, {@code true} for real time. Ends with its input.
 */
final class RigProcess {
    static final int PLUG = 1;
    static final int PLUG_DRIVER = 2;
    static final int REPAIR = 3;
    static final int UNPLUG = 4;
    static final int PLAY = 5;
    static final int PROGRESS = 6;
    static final int CAPTURED = 7;
    static final int FAILED = 8;
    static final int DONE = 9;

    /** Floats are sent in parts, so that neither side holds a capture twice. */
    static final int PART_FLOATS = 8192;

    private final PracticeRig rig;
    private final DataInputStream in;
    private final DataOutputStream out;

    private RigProcess(PracticeRig rig, DataInputStream in, DataOutputStream out) {
        this.rig = rig;
        this.in = in;
        this.out = out;
    }

    public static void main(String[] arguments) throws IOException, RigException {
        NightOptions options = new NightOptions(
                Path.of("nowhere"), Long.parseLong(arguments[0]), null, Boolean.parseBoolean(arguments[1]));
        try (PracticeRig rig = NightRig.atTheDock(options)) {
            RigProcess process = new RigProcess(
                    rig,
                    new DataInputStream(new BufferedInputStream(System.in)),
                    new DataOutputStream(new BufferedOutputStream(System.out)));
            process.text(rig.id());
            process.out.writeInt(rig.sampleRateHz());
            process.out.flush();
            for (int command = process.in.read(); command >= 0; command = process.in.read()) {
                process.obey(command);
                process.out.flush();
            }
        }
    }

    private void obey(int command) throws IOException {
        try {
            switch (command) {
                case PLUG -> rig.plug(new AssetTag(text()), text());
                case PLUG_DRIVER -> rig.plugDriver(new AssetTag(text()), text());
                case REPAIR -> rig.repair(new AssetTag(text()));
                case UNPLUG -> rig.unplug();
                case PLAY -> {
                    play(Wire.json().readValue(text(), SweepPlan.class), TestPointKind.valueOf(text()));
                    return;
                }
                default -> throw new IOException("unknown command " + command);
            }
            out.write(DONE);
        } catch (RigException | IllegalArgumentException e) {
            out.write(FAILED);
            text(e.toString());
        }
    }

    private void play(SweepPlan plan, TestPointKind kind) throws IOException, RigException {
        Capture capture = rig.play(plan, kind, this::progressed);
        out.write(CAPTURED);
        text(Wire.json().writeValueAsString(capture.header()));
        out.writeInt(capture.frames());
        ByteBuffer part = ByteBuffer.allocate(Float.BYTES * PART_FLOATS);
        for (CaptureChannel channel : capture.header().channels()) {
            float[] samples = capture.fullScale(channel.role());
            for (int from = 0; from < samples.length; from += PART_FLOATS) {
                int count = Math.min(PART_FLOATS, samples.length - from);
                part.asFloatBuffer().put(samples, from, count);
                out.write(part.array(), 0, Float.BYTES * count);
            }
        }
    }

    private void progressed(double share) {
        try {
            out.write(PROGRESS);
            out.writeDouble(share);
            out.flush();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException("the kiosk is gone", e);
        }
    }

    private String text() throws IOException {
        return new String(in.readNBytes(in.readInt()), StandardCharsets.UTF_8);
    }

    private void text(String text) throws IOException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        out.writeInt(bytes.length);
        out.write(bytes);
    }
}
