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
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The transform of one channel of a capture, forward alone and as an analysis uses it: from the record to its impulse response, there
 * and back. 2^17 samples hold a capture of 3 s at 48 kHz, 2^18 the dock's own plan. Here because {@link Fourier} is nobody else's
 * business. The transform works in place, so each call first copies its input, as a library that returns a new array also must.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 2)
@Fork(value = 1, jvmArgsAppend = "-XX:+UseSerialGC")
public class TransformBenchmark {
    private static final long SEED = 18;

    /** Number of samples. */
    @Param({"131072", "262144"})
    public int size;

    private double[] samples;
    private double[] inverse;

    /** Fills the input with noise, and the spectrum it is multiplied with. */
    @Setup(Level.Trial)
    public void fill() {
        SplittableRandom random = new SplittableRandom(SEED);
        samples = random.doubles(size, -1, 1).toArray();
        inverse = random.doubles(size, -1, 1).toArray();
        Fourier.forward(inverse);
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

    /**
     * One record to its impulse response.
     *
     * @return the response
     */
    @Benchmark
    public double[] response() {
        double[] work = samples.clone();
        Deconvolver.respond(work, inverse);
        return work;
    }
}
