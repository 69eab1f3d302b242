package org.docksweep.kiosk.rig.audio;

import java.io.IOException;
import java.io.InputStream;
import java.util.concurrent.TimeUnit;

/** Listens at a sink: when sound was last heard, and how much silence followed. */
final class SinkWatch implements AutoCloseable {
    private static final int FRAME_BYTES = 8;
    private static final long BOUND_S = 20;

    private final Process recorder;
    private long lastSoundNs;
    private long silentFrames;
    private boolean heard;

    SinkWatch(ProcessBuilder builder) throws IOException {
        recorder = builder.start();
        Thread listening = new Thread(this::listen, "sink-watch");
        listening.setDaemon(true);
        listening.start();
    }

    private void listen() {
        byte[] bytes = new byte[8192];
        try (InputStream sound = recorder.getInputStream()) {
            for (int count = sound.read(bytes); count >= 0; count = sound.read(bytes)) {
                hear(bytes, count, System.nanoTime());
            }
        } catch (IOException e) {
            // The recorder was ended.
        }
    }

    private synchronized void hear(byte[] bytes, int count, long nowNs) {
        int last = count - 1;
        while (last >= 0 && bytes[last] == 0) {
            last--;
        }
        if (last >= 0) {
            heard = true;
            lastSoundNs = nowNs;
            silentFrames = 0;
        }
        silentFrames += (count - 1 - last) / FRAME_BYTES;
        notifyAll();
    }

    synchronized boolean heard() {
        return heard;
    }

    /** Waits until so much silence has followed the last sound; the time at which that sound arrived. */
    synchronized long awaitSilence(long frames) throws InterruptedException {
        long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(BOUND_S);
        while (silentFrames < frames) {
            long leftMs = TimeUnit.NANOSECONDS.toMillis(until - System.nanoTime());
            if (leftMs <= 0) {
                throw new AssertionError("the sink does not fall silent");
            }
            wait(leftMs);
        }
        return lastSoundNs;
    }

    @Override
    public void close() {
        recorder.destroyForcibly();
    }
}
