package org.pipwright.bench.speed;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.Collection;
import java.util.List;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.infra.IterationParams;
import org.openjdk.jmh.profile.InternalProfiler;
import org.openjdk.jmh.results.AggregationPolicy;
import org.openjdk.jmh.results.IterationResult;
import org.openjdk.jmh.results.ScalarResult;

/**
 * How much of a processor the JVM under measurement got: its processor time over the time that passed. On a busy machine a
 * rate divided by this says far more than the rate. All of the JVM's threads count, so that helpers of a library do too.
 */
public final class CpuShare implements InternalProfiler {
    static final String LABEL = "cpu";

    private final OperatingSystemMXBean system = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    private long cpuBefore;
    private long before;

    @Override
    public String getDescription() {
        return "processor time of the JVM over the time that passed";
    }

    @Override
    public void beforeIteration(BenchmarkParams benchmark, IterationParams iteration) {
        cpuBefore = system.getProcessCpuTime();
        before = System.nanoTime();
    }

    @Override
    public Collection<ScalarResult> afterIteration(
            BenchmarkParams benchmark, IterationParams iteration, IterationResult result) {
        double passed = System.nanoTime() - before;
        double share = (system.getProcessCpuTime() - cpuBefore) / passed;
        return List.of(new ScalarResult(LABEL, share, "s/s", AggregationPolicy.AVG));
    }
}
