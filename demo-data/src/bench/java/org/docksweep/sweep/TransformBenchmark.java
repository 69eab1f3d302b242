package org.docksweep.sweep;

import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The transform of one channel: 2^18 real samples, forward. Here because {@link Fourier} is nobody else's business. The
 * transform works in place, so each call first copies its input, as a library that returns a new array also must.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 2)
@Fork(value = 1, jvmArgsAppend = "-XX:+UseSerialGC")
public class TransformBenchmark {
    private static final int SIZE = 1 << 18;
    private static final long SEED = 18;

    private final double[] samples = new double[SIZE];

    /** Fills the input with noise. */
    @Setup(Level.Trial)
    public void fill() {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int i = 0; i < SIZE; i++) {
            samples[i] = 2 * random.nextDouble() - 1;
        }
    }

    /**
     * One forward transform.
     *
     * @return the spectrum, packed
     */
    @Benchmark
    public double[] forward() {
        double[] work = samples.clone();
        Fourier.forward(work);
        return work;
    }
}
