package org.pipwright.bench.speed;

import ai.onnxruntime.OrtException;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
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
import org.pipwright.engine.network.Network;
import org.pipwright.engine.network.OnnxFile;

/** {@link OnnxPeer} on the same network and positions. */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
public class OnnxRuntimeBenchmark {
    /** Positions in one call. */
    @Param({"1", "20", "1000"})
    public int batch;

    private final float[] chances = new float[Siblings.COUNT * Outcomes.COUNT];
    private OnnxPeer peer;

    @Setup
    public void prepare() throws OrtException {
        Network network = BenchNetworks.contact();
        Siblings siblings = new Siblings();
        peer = new OnnxPeer(
                OnnxFile.toBytes(network, Map.of()), siblings.encoded(network.features()), siblings.possible());
    }

    @Benchmark
    @OperationsPerInvocation(Siblings.COUNT)
    public float[] run() throws OrtException {
        for (int first = 0; first < Siblings.COUNT; first += batch) {
            peer.run(first, batch, chances);
        }
        return chances;
    }

    @TearDown
    public void close() throws OrtException {
        peer.close();
    }
}
