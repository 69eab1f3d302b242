package org.docksweep.kiosk.rig.audio;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.Reasons;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.kiosk.rig.Rigs;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.ChannelRole;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepAnalyser;
import org.docksweep.sweep.SweepAnalysis;
import org.docksweep.sweep.SweepPlans;

/**
 * A measurement as the kiosk makes it, run as a process of its own because the sound system reads its environment only
 * at start. Arguments: {@code stop} or {@code measure}, then settings of the rig as NAME=VALUE. Prints a line of words
 * per fact, first the name of the fact.
 */
final class RigProcess {
    /** In mid-sweep. */
    private static final double PLAYING_SHARE = 0.3;

    private static final LevelMask MASK =
            new LevelMask(List.of(new LevelMask.Point(20, 1.8), new LevelMask.Point(20_000, 1.8)));

    private RigProcess() {}

    public static void main(String[] arguments) {
        Map<String, String> settings = new HashMap<>();
        for (int i = 1; i < arguments.length; i++) {
            String[] setting = arguments[i].split("=", 2);
            settings.put(setting[0], setting[1]);
        }
        try (AudioRig rig = (AudioRig) Rigs.open("audio", settings)) {
            AudioDevices.list()
                    .forEach(device -> device.words()
                            .forEach(words -> System.out.println("device " + Reasons.text(words, Locale.ENGLISH))));
            TestPoint point = new TestPoint(
                    "IN",
                    TestPointKind.TERMINALS,
                    "1+ / 1-",
                    List.of("LOAD"),
                    8,
                    MASK,
                    List.of(new NetworkElement.Resistor("R1", "in", "0", 8, 0.01)));
            boolean[] playing = new boolean[1];
            long began = System.nanoTime();
            Capture capture = rig.play(SweepPlans.dock(point, rig.sampleRateHz()), TestPointKind.TERMINALS, share -> {
                if (share > PLAYING_SHARE && !playing[0]) {
                    playing[0] = true;
                    System.out.println("playing");
                    if (arguments[0].equals("stop")) {
                        stop(rig);
                    }
                }
            });
            System.out.println("seconds " + (System.nanoTime() - began) / 1e9);
            System.out.println("delayFrames " + rig.loopDelayFrames().orElse(-1));
            print(capture, new SweepAnalyser().analyse(capture));
        } catch (RigException e) {
            System.out.println(
                    "failed " + e.kind() + " " + e.reason().key() + " " + Reasons.text(e.reason(), Locale.ENGLISH));
        }
        System.out.println("end");
    }

    private static void stop(AudioRig rig) {
        Thread hand = new Thread(() -> {
            long pressed = System.nanoTime();
            rig.stop();
            System.out.println("stoppedNs " + pressed + " " + (System.nanoTime() - pressed));
        });
        // The capture thread, from which it starts, does not keep the program alive; this one must.
        hand.setDaemon(false);
        hand.start();
    }

    private static void print(Capture capture, SweepAnalysis analysis) {
        System.out.println("load " + analysis.load());
        System.out.println("bits " + bits(capture.fullScale(ChannelRole.VOLTAGE)));
        analysis.issues()
                .forEach(i -> System.out.println("issue " + i.kind() + " " + Reasons.text(i.reason(), Locale.ENGLISH)));
        for (ChannelRole role : ChannelRole.values()) {
            if (capture.has(role)) {
                System.out.println("rms" + role + " " + rms(capture.fullScale(role)));
            }
        }
        ImpedanceCurve curve = analysis.impedance();
        if (curve != null) {
            double[] frequencyHz = curve.frequencyHz();
            for (int i = 0; i < curve.size(); i++) {
                System.out.println("z " + frequencyHz[i] + " " + curve.magnitudeOhm(i));
            }
        }
    }

    /** 16 when all samples are steps of 16 bits, else 24. */
    private static int bits(float[] samples) {
        for (float sample : samples) {
            double steps = sample * 0x1p15;
            if (steps != Math.rint(steps)) {
                return 24;
            }
        }
        return 16;
    }

    private static double rms(float[] samples) {
        double sum = 0;
        for (float sample : samples) {
            sum += sample * sample;
        }
        return Math.sqrt(sum / samples.length);
    }
}
