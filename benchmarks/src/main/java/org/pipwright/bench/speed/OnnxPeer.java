package org.pipwright.bench.speed;

import ai.onnxruntime.OnnxTensor;
import ai.onnxruntime.OrtEnvironment;
import ai.onnxruntime.OrtException;
import ai.onnxruntime.OrtSession;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.FloatBuffer;
import java.util.Map;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.network.OnnxFile;

/**
 * A peer: ONNX Runtime with one thread, on a network of ours and inputs that are encoded beforehand. They lie outside the
 * Java heap, so that only the library's own work counts.
 */
final class OnnxPeer implements AutoCloseable {
    private final OrtEnvironment environment = OrtEnvironment.getEnvironment();
    private final OrtSession session;
    private final FloatBuffer features;
    private final FloatBuffer possible;
    private final int inputs;

    /** Made of the network's ONNX file, the inputs of all positions and which of the six chances are possible in each. */
    OnnxPeer(byte[] network, float[] features, float[] possible) throws OrtException {
        this.features = direct(features);
        this.possible = direct(possible);
        inputs = features.length * Outcomes.COUNT / possible.length;
        try (OrtSession.SessionOptions options = new OrtSession.SessionOptions()) {
            options.setIntraOpNumThreads(1);
            options.setInterOpNumThreads(1);
            session = environment.createSession(network, options);
        }
    }

    private static FloatBuffer direct(float[] numbers) {
        FloatBuffer buffer = ByteBuffer.allocateDirect(Float.BYTES * numbers.length)
                .order(ByteOrder.nativeOrder())
                .asFloatBuffer();
        return buffer.put(numbers).rewind();
    }

    /** Writes the chances of so many positions. */
    void run(int first, int batch, float[] chances) throws OrtException {
        try (OnnxTensor x = rows(features, first, batch, inputs);
                OnnxTensor mask = rows(possible, first, batch, Outcomes.COUNT);
                OrtSession.Result result = session.run(Map.of(OnnxFile.FEATURES, x, OnnxFile.POSSIBLE, mask))) {
            FloatBuffer out = ((OnnxTensor) result.get(0)).getFloatBuffer();
            out.get(chances, first * Outcomes.COUNT, batch * Outcomes.COUNT);
        }
    }

    private OnnxTensor rows(FloatBuffer all, int first, int batch, int width) throws OrtException {
        FloatBuffer rows = all.duplicate()
                .position(first * width)
                .limit((first + batch) * width)
                .slice();
        return OnnxTensor.createTensor(environment, rows, new long[] {batch, width});
    }

    @Override
    public void close() throws OrtException {
        session.close();
    }
}
