package org.pipwright.bench.speed;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.pipwright.bench.BenchNetworks;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.network.NetworkEvaluation;
import org.pipwright.engine.position.Planes;

/** Our inference, measures and mask included. Which kernel it runs on is up to the arguments of the JVM. */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
public abstract class InferenceBenchmark {
    private final Siblings siblings = new Siblings();
    private final NetworkEvaluation evaluation = new NetworkEvaluation(BenchNetworks.contact());
    private final float[] chances = new float[Siblings.COUNT * Outcomes.COUNT];
    private final float[] ofGroup = new float[Siblings.COUNT * Outcomes.COUNT];

    /** Every position by itself. */
    @Benchmark
    @OperationsPerInvocation(Siblings.COUNT)
    public float[] scratch() {
        int[] planes = siblings.planes();
        for (int i = 0; i < Siblings.COUNT; i++) {
            evaluation.evaluate(planes, i * Planes.STRIDE, chances, i * Outcomes.COUNT);
        }
        return chances;
    }

    /** Each group by what differs from the position it came from; that position's own sums count too. */
    @Benchmark
    @OperationsPerInvocation(Siblings.COUNT)
    public float[] incremental() {
        int done = 0;
        for (Siblings.Group group : siblings.groups()) {
            evaluation.begin(group.base(), 0);
            evaluation.evaluateSiblings(group.planes(), group.size(), ofGroup);
            System.arraycopy(ofGroup, 0, chances, done * Outcomes.COUNT, group.size() * Outcomes.COUNT);
            done += group.size();
        }
        return chances;
    }
}
