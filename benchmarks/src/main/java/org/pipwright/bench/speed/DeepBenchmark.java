package org.pipwright.bench.speed;

import ai.onnxruntime.OrtException;
import java.util.Arrays;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.pipwright.bench.BenchNetworks;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.network.OnnxFile;
import org.pipwright.engine.network.ResidualEvaluation;
import org.pipwright.engine.network.ResidualNetwork;
import org.pipwright.models.ModelCatalog;

/**
 * Residual networks, so many positions a call: ours on the vector kernel, all of it from planes to chances, and ONNX
 * Runtime with one thread on inputs encoded beforehand. After the first layer a position takes at most {@code 2 * blocks * width * width +
 * 6 * width} multiply-adds.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(jvmArgsAppend = {"-Dpipwright.kernel=vector", "--add-modules=jdk.incubator.vector"})
public class DeepBenchmark {
    /** A shipped net's deep network, that of a model file, or the width and number of blocks of one with random weights, half of whose hidden numbers are not zero. */
    @Param({"swift", "standard", "256x2", "512x4"})
    public String net;

    /** Positions in one call. */
    @Param({"6", "20", "420"})
    public int batch;

    private final float[] chances = new float[AllReplies.COUNT * Outcomes.COUNT];
    private final float[] possible = new float[AllReplies.COUNT * Outcomes.COUNT];
    private float[] ofCall;
    private int[] base;
    private int[][] calls;
    private ResidualEvaluation evaluation;
    private OnnxPeer peer;

    @Setup
    public void prepare() throws OrtException {
        ResidualNetwork network = network(net);
        AllReplies work = new AllReplies();
        base = work.base();
        calls = new int[AllReplies.COUNT / batch][];
        for (int c = 0; c < calls.length; c++) {
            calls[c] = work.planes(c * batch, batch);
        }
        ofCall = new float[batch * Outcomes.COUNT];
        evaluation = new ResidualEvaluation(network);
        Arrays.fill(possible, 1);
        peer = new OnnxPeer(OnnxFile.toBytes(network, Map.of()), work.encoded(network.features()), possible);
    }

    private static ResidualNetwork network(String net) {
        if (!net.matches("[0-9]+x[0-9]+")) {
            return (ResidualNetwork) ModelCatalog.shipped().load(net).net();
        }
        String[] sizes = net.split("x");
        return BenchNetworks.residual(Integer.parseInt(sizes[0]), Integer.parseInt(sizes[1]));
    }

    @Benchmark
    @OperationsPerInvocation(AllReplies.COUNT)
    public float[] ours() {
        evaluation.begin(base, 0);
        for (int c = 0; c < calls.length; c++) {
            evaluation.evaluateSiblings(calls[c], batch, ofCall);
            System.arraycopy(ofCall, 0, chances, c * ofCall.length, ofCall.length);
        }
        return chances;
    }

    @Benchmark
    @OperationsPerInvocation(AllReplies.COUNT)
    public float[] onnxRuntime() throws OrtException {
        for (int first = 0; first < AllReplies.COUNT; first += batch) {
            peer.run(first, batch, chances);
        }
        return chances;
    }

    @TearDown
    public void close() throws OrtException {
        peer.close();
    }
}
