package org.docksweep.kiosk.rig.audio;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.docksweep.fleet.Reason;
import org.docksweep.sweep.ChannelRole;
import org.docksweep.sweep.Rig;
import org.docksweep.sweep.RigException;

/**
 * One full-duplex run. A capture thread opens the lines, starts capturing, starts the playback thread once the first
 * block has arrived, and watches the level; the caller waits, at most for a time limit. Whatever ends the run first
 * (samples complete, stop, guard, lost device, limit) decides what the caller hears; then the lines are silenced and
 * closed. A sound system that hangs can hold up these threads, but not the caller.
 */
final class Measurement {
    /** How long closing may hold up the caller, in milliseconds. */
    private static final long CLOSING_MS = 500;

    /** How long silencing may hold up whoever stops, in milliseconds; it takes about 20. */
    private static final long SILENCING_MS = 200;

    private final AudioSettings settings;
    private final LineOpener opener;
    private final double[] volts;
    private final AudioSettings.Output output;
    private final Rig.ProgressListener listener;
    private final CompletableFuture<float[][]> result = new CompletableFuture<>();
    private volatile PlayLine play;
    private volatile CaptureLine capture;

    /**
     * Prepares.
     *
     * @param settings settings
     * @param opener opens the lines
     * @param volts all that is played, in volts, from the lead-in to the silence after
     * @param output where it is played
     * @param listener hears of progress, on the capture thread
     */
    Measurement(
            AudioSettings settings,
            LineOpener opener,
            double[] volts,
            AudioSettings.Output output,
            Rig.ProgressListener listener) {
        this.settings = settings;
        this.opener = opener;
        this.volts = volts;
        this.output = output;
        this.listener = listener;
    }

    /**
     * Plays and captures.
     *
     * @param limitMs longest time for everything
     * @return samples in digital full scale by role, as long as what was played or up to a block longer
     * @throws RigException if the run did not come to its end
     */
    float[][] run(long limitMs) throws RigException {
        thread("audio-capture", this::capture);
        try {
            return result.get(limitMs, TimeUnit.MILLISECONDS);
        } catch (TimeoutException e) {
            end(RigException.Cause.DEVICE_LOST, Reason.of("audio-time-limit", Long.toString(limitMs / 1000)));
            return outcome();
        } catch (InterruptedException e) {
            stop();
            Thread.currentThread().interrupt();
            return outcome();
        } catch (ExecutionException e) {
            return outcome();
        } finally {
            closeSoon();
        }
    }

    /** What ended the run. The result is complete when this is called. */
    private float[][] outcome() throws RigException {
        try {
            return result.getNow(null);
        } catch (CompletionException e) {
            if (e.getCause() instanceof RigException ended) {
                throw ended;
            }
            throw e;
        }
    }

    /** Ends the run and makes silence; from any thread. */
    void stop() {
        if (end(RigException.Cause.STOPPED, Reason.of("rig-stopped"))) {
            silence();
        }
    }

    private boolean end(RigException.Cause cause, Reason reason) {
        return result.completeExceptionally(new RigException(cause, reason));
    }

    private void silence() {
        PlayLine line = play;
        if (line != null) {
            // The one who pressed stop may be the event thread, and the sound system may hang.
            await(thread("audio-silence", line::silence), SILENCING_MS);
        }
    }

    private void capture() {
        try {
            capture = opener.openCapture(settings);
            play = opener.openPlay(settings);
            if (result.isDone()) {
                // The caller has gone meanwhile and could not close what was not open.
                close();
                return;
            }
            CaptureLine line = capture;
            List<ChannelRole> roles = settings.roles();
            int blockFrames = LevelGuard.blockFrames(settings.sampleRateHz());
            CaptureLoop loop = new CaptureLoop(line, settings, roles, blockFrames, volts.length);
            LevelGuard guard = new LevelGuard(settings, volts);
            line.start();
            watch(loop, guard, roles);
        } catch (RigException e) {
            result.completeExceptionally(e);
        } catch (IllegalStateException e) {
            // The line was closed under it, or the device went while it was being started.
            end(RigException.Cause.DEVICE_LOST, Reason.of("audio-lost-input"));
        } catch (RuntimeException | Error e) {
            result.completeExceptionally(e);
        }
    }

    private void watch(CaptureLoop loop, LevelGuard guard, List<ChannelRole> roles) {
        int voltage = roles.indexOf(ChannelRole.VOLTAGE);
        int current = roles.indexOf(ChannelRole.CURRENT);
        for (int block = 0; !loop.complete() && !result.isDone(); block++) {
            int from = loop.frames();
            if (!loop.next()) {
                end(RigException.Cause.DEVICE_LOST, Reason.of("audio-lost-input"));
                return;
            }
            if (block == 0) {
                thread("audio-playback", this::play);
            }
            Optional<Reason> alarm = guard.look(block, loop.samples()[voltage], loop.samples()[current], from);
            if (alarm.isPresent()) {
                end(RigException.Cause.REFUSED, alarm.get());
                silence();
                return;
            }
            listener.progressed(loop.share());
        }
        result.complete(loop.samples());
    }

    private void play() {
        try {
            PlayLine line = play;
            line.start();
            int blockFrames = LevelGuard.blockFrames(settings.sampleRateHz());
            if (!new Playback(line, volts, output, blockFrames).run(result::isDone)) {
                end(RigException.Cause.DEVICE_LOST, Reason.of("audio-lost-output"));
            }
        } catch (IllegalStateException e) {
            end(RigException.Cause.DEVICE_LOST, Reason.of("audio-lost-output"));
        } catch (RuntimeException | Error e) {
            result.completeExceptionally(e);
        }
    }

    private void closeSoon() {
        await(thread("audio-close", this::close), CLOSING_MS);
    }

    private static void await(Thread task, long boundMs) {
        try {
            task.join(boundMs);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private synchronized void close() {
        if (play != null) {
            play.silence();
            play.close();
        }
        if (capture != null) {
            capture.close();
        }
    }

    private static Thread thread(String name, Runnable task) {
        Thread thread = new Thread(task, name);
        // A hanging sound system must not keep the kiosk from ending.
        thread.setDaemon(true);
        thread.start();
        return thread;
    }
}
