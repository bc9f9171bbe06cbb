package org.pipwright.bench.speed;

import ai.onnxruntime.OnnxTensor;
import ai.onnxruntime.OrtEnvironment;
import ai.onnxruntime.OrtException;
import ai.onnxruntime.OrtSession;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.FloatBuffer;
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
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Network;
import org.pipwright.engine.network.OnnxFile;

/**
 * A peer: ONNX Runtime with one thread, on the same network and positions. Inputs are encoded beforehand and lie outside
 * the Java heap, so that only the library's own work counts.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
public class OnnxRuntimeBenchmark {
    /** Positions in one call. */
    @Param({"1", "20", "1000"})
    public int batch;

    private final float[] chances = new float[Siblings.COUNT * Outcomes.COUNT];
    private OrtEnvironment environment;
    private OrtSession session;
    private FloatBuffer features;
    private FloatBuffer possible;
    private int inputs;

    @Setup
    public void prepare() throws OrtException {
        Network network = BenchNetworks.contact();
        FeatureSet set = network.features();
        Siblings siblings = new Siblings();
        inputs = set.inputs();
        features = direct(siblings.encoded(set));
        possible = direct(siblings.possible());
        environment = OrtEnvironment.getEnvironment();
        try (OrtSession.SessionOptions options = new OrtSession.SessionOptions()) {
            options.setIntraOpNumThreads(1);
            options.setInterOpNumThreads(1);
            session = environment.createSession(OnnxFile.toBytes(network, Map.of()), options);
        }
    }

    private static FloatBuffer direct(float[] numbers) {
        FloatBuffer buffer = ByteBuffer.allocateDirect(Float.BYTES * numbers.length)
                .order(ByteOrder.nativeOrder())
                .asFloatBuffer();
        return buffer.put(numbers).rewind();
    }

    @Benchmark
    @OperationsPerInvocation(Siblings.COUNT)
    public float[] run() throws OrtException {
        for (int first = 0; first < Siblings.COUNT; first += batch) {
            try (OnnxTensor x = rows(features, first, inputs);
                    OnnxTensor mask = rows(possible, first, Outcomes.COUNT);
                    OrtSession.Result result = session.run(Map.of(OnnxFile.FEATURES, x, OnnxFile.POSSIBLE, mask))) {
                FloatBuffer out = ((OnnxTensor) result.get(0)).getFloatBuffer();
                out.get(chances, first * Outcomes.COUNT, batch * Outcomes.COUNT);
            }
        }
        return chances;
    }

    private OnnxTensor rows(FloatBuffer all, int first, int width) throws OrtException {
        FloatBuffer rows = all.duplicate()
                .position(first * width)
                .limit((first + batch) * width)
                .slice();
        return OnnxTensor.createTensor(environment, rows, new long[] {batch, width});
    }

    @TearDown
    public void close() throws OrtException {
        session.close();
    }
}
