package org.docksweep.benchmarks;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.Collection;
import java.util.List;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.infra.IterationParams;
import org.openjdk.jmh.profile.InternalProfiler;
import org.openjdk.jmh.results.AggregationPolicy;
import org.openjdk.jmh.results.IterationResult;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.ScalarResult;

/**
 * Adds the processor time of the whole process per operation, garbage collector and compiler included: on a machine that
 * others use too, the time by the clock says little about the work done.
 */
public final class CpuTimeProfiler implements InternalProfiler {
    private static final double NS_PER_MS = 1e6;

    private final OperatingSystemMXBean system =
            ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);
    private long startNs;

    @Override
    public String getDescription() {
        return "processor time per operation, whole process";
    }

    @Override
    public void beforeIteration(BenchmarkParams benchmark, IterationParams iteration) {
        startNs = system.getProcessCpuTime();
    }

    @Override
    public Collection<? extends Result<?>> afterIteration(
            BenchmarkParams benchmark, IterationParams iteration, IterationResult result) {
        double spentMs = (system.getProcessCpuTime() - startNs) / NS_PER_MS;
        long operations = Math.max(1, result.getMetadata().getAllOps());
        return List.of(new ScalarResult("cpu", spentMs / operations, "ms/op", AggregationPolicy.AVG));
    }
}
