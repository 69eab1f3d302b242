package org.docksweep.benchmarks;

import java.util.concurrent.TimeUnit;
import org.docksweep.acoustic.SoundEar;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepAnalyser;
import org.docksweep.sweep.SweepAnalysis;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** From a capture of three channels at 48 kHz to its curves. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 5, time = 3)
@Fork(value = 1, jvmArgsAppend = "-XX:+UseSerialGC")
public class CurveBenchmark {
    /** 3 s: one sweep, 3 s in all. dock: the dock's own plan, two sweeps. */
    @Param({"3s", "dock"})
    public String plan;

    private final SweepAnalyser analyser = SoundEar.analyser();
    private Capture capture;

    /**
     * Plays the capture.
     *
     * @throws RigException never, with the virtual rig
     */
    @Setup(Level.Trial)
    public void play() throws RigException {
        DockScene scene = new DockScene("SPIN12");
        capture = "3s".equals(plan) ? scene.threeSeconds() : scene.asTheDock();
        SweepAnalysis read = analyser.analyse(capture);
        if (!read.clean() || read.impedance() == null || read.acoustic() == null) {
            throw new IllegalStateException(
                    "the capture to be read again and again is spoiled: " + read.issues() + "; choose another unit");
        }
    }

    /**
     * Reads the capture.
     *
     * @return the curves
     */
    @Benchmark
    public SweepAnalysis curves() {
        return analyser.analyse(capture);
    }
}
