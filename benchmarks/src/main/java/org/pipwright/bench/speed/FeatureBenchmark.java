package org.pipwright.bench.speed;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.pipwright.bench.BenchPositions;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.position.Planes;

/** Features of a thousand positions: the measures that inference computes each time, and the whole input. */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
public class FeatureBenchmark {
    private static final FeatureSet SET = FeatureSet.CONTACT_1;

    private final float[] extras = new float[BenchPositions.COUNT * SET.extras()];
    private final float[] inputs = new float[BenchPositions.COUNT * SET.inputs()];
    private int[] planes;

    @Setup
    public void prepare() {
        planes = BenchPositions.planes(BenchPositions.netPlay());
    }

    @Benchmark
    @OperationsPerInvocation(BenchPositions.COUNT)
    public float[] extras() {
        for (int i = 0; i < BenchPositions.COUNT; i++) {
            SET.extras(planes, i * Planes.STRIDE, extras, i * SET.extras());
        }
        return extras;
    }

    @Benchmark
    @OperationsPerInvocation(BenchPositions.COUNT)
    public float[] encode() {
        for (int i = 0; i < BenchPositions.COUNT; i++) {
            SET.encode(planes, i * Planes.STRIDE, inputs, i * SET.inputs());
        }
        return inputs;
    }
}
