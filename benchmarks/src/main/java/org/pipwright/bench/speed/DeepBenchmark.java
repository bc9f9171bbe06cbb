package org.pipwright.bench.speed;

import ai.onnxruntime.OnnxTensor;
import ai.onnxruntime.OrtEnvironment;
import ai.onnxruntime.OrtException;
import ai.onnxruntime.OrtSession;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.FloatBuffer;
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
    /** Width and number of blocks. */
    @Param({"256x2", "512x4"})
    public String shape;

    /** Positions in one call. */
    @Param({"6", "20", "420"})
    public int batch;

    private final float[] chances = new float[AllReplies.COUNT * Outcomes.COUNT];
    private final float[] possible = new float[AllReplies.COUNT * Outcomes.COUNT];
    private float[] ofCall;
    private int[] base;
    private int[][] calls;
    private ResidualEvaluation evaluation;
    private OrtEnvironment environment;
    private OrtSession session;
    private FloatBuffer features;
    private int inputs;

    @Setup
    public void prepare() throws OrtException {
        String[] sizes = shape.split("x");
        ResidualNetwork network = BenchNetworks.residual(Integer.parseInt(sizes[0]), Integer.parseInt(sizes[1]));
        AllReplies work = new AllReplies();
        base = work.base();
        calls = new int[AllReplies.COUNT / batch][];
        for (int c = 0; c < calls.length; c++) {
            calls[c] = work.planes(c * batch, batch);
        }
        ofCall = new float[batch * Outcomes.COUNT];
        evaluation = new ResidualEvaluation(network);
        inputs = network.features().inputs();
        features = direct(work.encoded(network.features()));
        Arrays.fill(possible, 1);
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
            try (OnnxTensor x = rows(features, first, inputs);
                    OnnxTensor mask = rows(FloatBuffer.wrap(possible), first, Outcomes.COUNT);
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
