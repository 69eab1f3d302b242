package org.docksweep.benchmarks;

import java.util.concurrent.TimeUnit;
import org.docksweep.demo.physics.Fault;
import org.docksweep.demo.physics.FaultKind;
import org.docksweep.judge.CabinetJudgement;
import org.docksweep.judge.Judge;
import org.docksweep.judge.JudgeRequest;
import org.docksweep.sweep.RigException;
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

/**
 * From one capture of three channels at 48 kHz to verdict and suspects, with taught references, the cabinet's own baseline and a
 * calibrated rig. SPIN12 has two ways, HEAD3 three, both behind one pair of terminals.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 10, time = 3)
@Measurement(iterations = 5, time = 4)
@Fork(value = 1, jvmArgsAppend = "-XX:+UseSerialGC")
public class VerdictBenchmark {
    /** Cabinet model. */
    @Param({"SPIN12", "HEAD3"})
    public String model;

    /** What the verdict is: PASS for a healthy cabinet, FAIL with its high-frequency driver open. */
    @Param({"PASS", "FAIL"})
    public String verdict;

    /** 3s: 3 s in all, one sweep. dock: the dock's own plan, two sweeps. */
    @Param({"3s", "dock"})
    public String plan;

    private JudgeRequest request;

    /**
     * Teaches, calibrates, sweeps.
     *
     * @throws RigException never, with the virtual rig
     */
    @Setup(Level.Trial)
    public void sweep() throws RigException {
        Fault fault = "FAIL".equals(verdict) ? Fault.of(FaultKind.DRIVER_OPEN, "HF") : null;
        request = new DockScene(model).request(fault, "3s".equals(plan));
        String given = Judge.judge(request).verdict().name();
        if (!given.equals(verdict)) {
            throw new IllegalStateException("expected " + verdict + " of " + model + ", but the gate said " + given
                    + "; the time of another verdict would be measured");
        }
    }

    /**
     * Judges the capture.
     *
     * @return the judgement
     */
    @Benchmark
    public CabinetJudgement judge() {
        return Judge.judge(request);
    }
}
