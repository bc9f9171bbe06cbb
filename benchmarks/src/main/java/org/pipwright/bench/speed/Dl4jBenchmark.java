package org.pipwright.bench.speed;

import java.util.concurrent.TimeUnit;
import org.deeplearning4j.nn.multilayer.MultiLayerNetwork;
import org.nd4j.linalg.api.ndarray.INDArray;
import org.nd4j.linalg.factory.Nd4j;
import org.nd4j.linalg.indexing.NDArrayIndex;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.pipwright.bench.BenchNetworks;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.network.Network;
import org.pipwright.training.reference.ReferenceNetwork;

/**
 * A peer: Deeplearning4j's {@code output()} on the same network and positions, up to the scores before the softmax. Inputs
 * are encoded beforehand. OMP_NUM_THREADS=1 in the environment keeps it to one thread.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
public class Dl4jBenchmark {
    /** Positions in one call. */
    @Param({"1", "20", "1000"})
    public int batch;

    private final float[] scores = new float[Siblings.COUNT * Outcomes.COUNT];
    private MultiLayerNetwork theirs;
    private INDArray[] batches;

    @Setup
    public void prepare() {
        Network network = BenchNetworks.contact();
        int inputs = network.features().inputs();
        theirs = ReferenceNetwork.of(network);
        INDArray all =
                Nd4j.create(new Siblings().encoded(network.features()), new long[] {Siblings.COUNT, inputs}, 'c');
        batches = new INDArray[Siblings.COUNT / batch];
        for (int b = 0; b < batches.length; b++) {
            batches[b] = all.get(NDArrayIndex.interval(b * batch, (b + 1) * batch), NDArrayIndex.all())
                    .dup('c');
        }
    }

    @Benchmark
    @OperationsPerInvocation(Siblings.COUNT)
    public float[] output() {
        int done = 0;
        for (INDArray x : batches) {
            float[] rows = theirs.output(x).dup('c').data().asFloat();
            System.arraycopy(rows, 0, scores, done, rows.length);
            done += rows.length;
        }
        return scores;
    }
}
