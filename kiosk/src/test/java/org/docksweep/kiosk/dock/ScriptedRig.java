package org.docksweep.kiosk.dock;

import java.time.Instant;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.kiosk.rig.Lead;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CaptureChannel;
import org.docksweep.sweep.CaptureHeader;
import org.docksweep.sweep.ChannelRole;
import org.docksweep.sweep.Rig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlan;

/** A rig that captures numbered silence at once, or waits in the middle of a playback when it is told to. */
final class ScriptedRig implements Rig {
    final List<String> plugged = new java.util.concurrent.CopyOnWriteArrayList<>();
    final AtomicInteger plays = new AtomicInteger();
    final AtomicInteger stopsHeard = new AtomicInteger();
    private volatile CountDownLatch gateInPlayback;
    private volatile CountDownLatch inPlayback = new CountDownLatch(1);
    private volatile boolean stopped;
    private volatile RigException next;

    /** The next playbacks wait until {@link #goOn()} or stop. */
    void waitInPlayback() {
        gateInPlayback = new CountDownLatch(1);
        inPlayback = new CountDownLatch(1);
    }

    void awaitPlayback() throws InterruptedException {
        if (!inPlayback.await(DockBench.PATIENCE_S, TimeUnit.SECONDS)) {
            throw new IllegalStateException("the rig was never asked to play");
        }
    }

    void goOn() {
        CountDownLatch gate = gateInPlayback;
        gateInPlayback = null;
        gate.countDown();
    }

    void failNext(RigException exception) {
        next = exception;
    }

    Lead lead(boolean movesByItself) {
        return new Lead() {
            @Override
            public boolean movesByItself() {
                return movesByItself;
            }

            @Override
            public void plug(AssetTag label, String testPointCode) {
                plugged.add(label + "/" + testPointCode);
            }

            @Override
            public void plugDriver(AssetTag label, String positionCode) {
                plugged.add(label + "/" + positionCode + " bare");
            }
        };
    }

    @Override
    public String id() {
        return "scripted";
    }

    @Override
    public int sampleRateHz() {
        return 8000;
    }

    @Override
    public Capture play(SweepPlan plan, TestPointKind kind, ProgressListener listener) throws RigException {
        int number = plays.incrementAndGet();
        RigException failure = next;
        if (failure != null) {
            next = null;
            throw failure;
        }
        stopped = false;
        listener.progressed(0.5);
        CountDownLatch gate = gateInPlayback;
        inPlayback.countDown();
        if (gate != null) {
            await(gate);
        }
        if (stopped) {
            throw new RigException(RigException.Cause.STOPPED, Reason.of("dock-stopped"));
        }
        CaptureHeader header = new CaptureHeader(
                Instant.parse("2026-05-02T01:00:00Z"),
                id(),
                kind,
                List.of(new CaptureChannel(ChannelRole.VOLTAGE, 40), new CaptureChannel(ChannelRole.CURRENT, 8)),
                plan,
                15.0);
        float mark = number / 1000f;
        return new Capture(header, new float[][] {{mark, 0}, {0, mark}});
    }

    private static void await(CountDownLatch gate) {
        try {
            if (!gate.await(DockBench.PATIENCE_S, TimeUnit.SECONDS)) {
                throw new IllegalStateException("nobody let the rig go on");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void stop() {
        stopsHeard.incrementAndGet();
        stopped = true;
        CountDownLatch gate = gateInPlayback;
        if (gate != null) {
            gateInPlayback = null;
            gate.countDown();
        }
    }

    @Override
    public void close() {
        stop();
    }
}
