package org.docksweep.kiosk.rig.audio;

import java.time.Clock;
import java.util.HashMap;
import java.util.Map;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.Rig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlan;

/** The rig of the sound interface over scripted lines, the input of which goes away in the middle of a measurement once it is told to. */
public final class VanishingSound implements Rig {
    private static final int DELAY_FRAMES = 5_000;
    private static final int LOSE_AT_FRAME = 30_000;
    private volatile boolean loseNext;

    /** The interface goes away in the next measurement, and is back after it. */
    public void loseNext() {
        loseNext = true;
    }

    @Override
    public Capture play(SweepPlan plan, TestPointKind kind, ProgressListener listener) throws RigException {
        FakeSound sound = new FakeSound(DELAY_FRAMES, 1);
        if (loseNext) {
            loseNext = false;
            sound.loseInputAt = LOSE_AT_FRAME;
        }
        Map<String, String> settings = new HashMap<>(AudioSettingsTest.LEAST);
        settings.put("voltageFullScale", "20");
        try (AudioRig rig = new AudioRig(AudioSettings.of(settings), sound, Clock.systemUTC())) {
            return rig.play(plan, kind, listener);
        }
    }

    @Override
    public String id() {
        return "audio";
    }

    @Override
    public int sampleRateHz() {
        return 48_000;
    }

    @Override
    public void stop() {
        // Nothing sounds between measurements, and none is stopped here.
    }

    @Override
    public void close() {
        // Every measurement closes its own lines.
    }
}
