package org.docksweep.kiosk.rig.audio;

import java.util.concurrent.TimeUnit;
import org.docksweep.sweep.RigException;

/**
 * Two strict scripted lines with a wire between them: channel 1 of the output comes back after a delay as voltage on
 * input 1 and as current on input 2. Time runs as fast as both sides are served. Use before start or after close is an
 * error; losing, hanging and gain are scripted.
 */
final class FakeSound implements LineOpener {
    private static final int PLAY_CHANNELS = 2;
    private static final int CAPTURE_CHANNELS = 2;
    private static final int BUFFER_FRAMES = 4800;
    private static final long BOUND_MS = 20_000;

    private final SampleCodec codec = new SampleCodec(24, false);
    private final float[] played = new float[48_000 * 20];
    private final int delayFrames;
    private final double gain;
    int loseInputAt = Integer.MAX_VALUE;
    int loseOutputAt = Integer.MAX_VALUE;
    int hangInputAt = Integer.MAX_VALUE;
    boolean hangSilence;
    RigException refusal;

    private int written;
    private int taken;
    private boolean playStarted;
    private boolean captureStarted;
    private boolean silenced;
    private boolean playClosed;
    private boolean captureClosed;
    private boolean otherChannelUsed;
    private boolean released;

    /**
     * Makes the wire.
     *
     * @param delayFrames delay, at least a block
     * @param gain what comes back for what was played
     */
    FakeSound(int delayFrames, double gain) {
        this.delayFrames = delayFrames;
        this.gain = gain;
    }

    @Override
    public PlayLine openPlay(AudioSettings settings) throws RigException {
        if (refusal != null) {
            throw refusal;
        }
        return new FakePlay();
    }

    @Override
    public CaptureLine openCapture(AudioSettings settings) {
        return new FakeCapture();
    }

    /** Whether both lines were closed, waiting for it. */
    synchronized boolean closes() throws InterruptedException {
        until(() -> playClosed && captureClosed);
        return playClosed && captureClosed;
    }

    /** Ends a hanging {@link #hangSilence}. */
    synchronized void release() {
        released = true;
        notifyAll();
    }

    synchronized boolean silenced() {
        return silenced;
    }

    synchronized boolean otherChannelUsed() {
        return otherChannelUsed;
    }

    private interface Condition {
        boolean holds();
    }

    private synchronized void until(Condition condition) throws InterruptedException {
        long end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(BOUND_MS);
        while (!condition.holds()) {
            long leftMs = TimeUnit.NANOSECONDS.toMillis(end - System.nanoTime());
            if (leftMs <= 0) {
                throw new AssertionError("the scripted lines waited for more than " + BOUND_MS + " ms");
            }
            wait(leftMs);
        }
    }

    private synchronized void untilSure(Condition condition) {
        try {
            until(condition);
        } catch (InterruptedException e) {
            throw new AssertionError("nobody interrupts an audio thread", e);
        }
    }

    private static void demand(boolean right, String what) {
        if (!right) {
            throw new AssertionError(what);
        }
    }

    private final class FakePlay implements PlayLine {
        @Override
        public SampleCodec codec() {
            return codec;
        }

        @Override
        public int channels() {
            return PLAY_CHANNELS;
        }

        @Override
        public void start() {
            synchronized (FakeSound.this) {
                demand(captureStarted && taken > 0, "played before anything was captured");
                playStarted = true;
            }
        }

        @Override
        public int write(byte[] bytes) {
            synchronized (FakeSound.this) {
                demand(playStarted, "written before start");
                int frames = bytes.length / codec.bytesPerSample() / PLAY_CHANNELS;
                demand(frames * codec.bytesPerSample() * PLAY_CHANNELS == bytes.length, "a torn frame");
                untilSure(() -> silenced || playClosed || written - taken < BUFFER_FRAMES);
                int accepted = Math.max(0, Math.min(frames, loseOutputAt - written));
                for (int n = 0; n < accepted; n++) {
                    int at = n * PLAY_CHANNELS * codec.bytesPerSample();
                    float value = codec.read(bytes, at);
                    otherChannelUsed |= codec.read(bytes, at + codec.bytesPerSample()) != 0;
                    played[written + n] = value;
                }
                if (silenced || playClosed) {
                    return 0;
                }
                written += accepted;
                FakeSound.this.notifyAll();
                return accepted * codec.bytesPerSample() * PLAY_CHANNELS;
            }
        }

        @Override
        public void silence() {
            synchronized (FakeSound.this) {
                if (hangSilence) {
                    untilSure(() -> released);
                }
                silenced = true;
                FakeSound.this.notifyAll();
            }
        }

        @Override
        public void close() {
            synchronized (FakeSound.this) {
                playClosed = true;
                FakeSound.this.notifyAll();
            }
        }
    }

    private final class FakeCapture implements CaptureLine {
        @Override
        public SampleCodec codec() {
            return codec;
        }

        @Override
        public int channels() {
            return CAPTURE_CHANNELS;
        }

        @Override
        public void start() {
            synchronized (FakeSound.this) {
                captureStarted = true;
            }
        }

        @Override
        public int read(byte[] bytes) {
            synchronized (FakeSound.this) {
                demand(captureStarted && !captureClosed, "read before start or after close");
                int frames = bytes.length / codec.bytesPerSample() / CAPTURE_CHANNELS;
                boolean lost = taken + frames > loseInputAt;
                boolean hangs = taken + frames > hangInputAt;
                int needed = taken + frames - delayFrames;
                // A real input goes on when the output has stopped: it hears silence.
                untilSure(() -> captureClosed || !hangs && (silenced || playClosed || lost || written >= needed));
                if (lost || captureClosed) {
                    return 0;
                }
                for (int n = 0; n < frames; n++) {
                    int from = taken + n - delayFrames;
                    double value = from >= 0 && from < written ? gain * played[from] : 0;
                    int at = n * CAPTURE_CHANNELS * codec.bytesPerSample();
                    codec.write(value, bytes, at);
                    codec.write(value, bytes, at + codec.bytesPerSample());
                }
                taken += frames;
                FakeSound.this.notifyAll();
                return bytes.length;
            }
        }

        @Override
        public void close() {
            synchronized (FakeSound.this) {
                captureClosed = true;
                FakeSound.this.notifyAll();
            }
        }
    }
}
