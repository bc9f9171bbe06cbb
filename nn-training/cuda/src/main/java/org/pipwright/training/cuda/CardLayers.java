package org.pipwright.training.cuda;

import java.nio.ByteBuffer;
import org.bytedeco.cuda.cudart.CUstream_st;
import org.pipwright.engine.network.Lanes;

/**
 * Layered networks on the card, one for contact and one for races, in single precision. Of the first layer only the weights
 * of inputs that are not 0 are read: with pairs that is one in ten.
 */
final class CardLayers implements CardAnswers {
    /** Threads a row; more than the inputs' listing needs, and as many as most first layers have outputs. */
    private static final int THREADS = 128;

    private final Kernels kernels;
    private final int rowsAtOnce;
    private final long shapes;
    private final long weights;
    private final long logits;

    /** The network's own biases are in its scores; these are 0. */
    private final long bias;

    CardLayers(Lanes lanes, int rowsAtOnce, CUstream_st stream) {
        this.rowsAtOnce = rowsAtOnce;
        kernels = new Kernels(Kernels.ANY_WIDTH, stream);
        ByteBuffer ints = Gpu.pinned(4L * LayeredNets.shapes(lanes).length);
        ints.asIntBuffer().put(LayeredNets.shapes(lanes));
        shapes = onCard(ints, stream);
        ByteBuffer floats = Gpu.pinned(4L * lanes.weights());
        floats.asFloatBuffer().put(LayeredNets.weights(lanes));
        weights = onCard(floats, stream);
        logits = Gpu.allocate(4L * ResidualShape.OUTPUTS * rowsAtOnce);
        bias = Gpu.allocate(4L * ResidualShape.OUTPUTS);
        Gpu.clear(bias, 4L * ResidualShape.OUTPUTS, stream);
    }

    private static long onCard(ByteBuffer host, CUstream_st stream) {
        long memory = Gpu.allocate(host.capacity());
        Gpu.toCard(host, memory, host.capacity(), stream);
        Gpu.await(stream);
        Gpu.unpin(host);
        return memory;
    }

    @Override
    public Kernels kernels() {
        return kernels;
    }

    @Override
    public void answer(long planes, long index, boolean swap, int rows, long chances, long equity) {
        for (int from = 0; from < rows; from += rowsAtOnce) {
            int now = Math.min(rowsAtOnce, rows - from);
            long positions = index == 0 ? planes + 32L * from : planes;
            long indexes = index == 0 ? 0 : index + 4L * from;
            kernels.with(positions)
                    .with(indexes)
                    .with(swap ? 1 : 0)
                    .with(shapes)
                    .with(weights)
                    .with(logits)
                    .start("layers", now, 1, THREADS);
            kernels.with(logits)
                    .with(bias)
                    .with(positions)
                    .with(indexes)
                    .with(swap ? 1 : 0)
                    .with(now)
                    .with(chances == 0 ? 0L : chances + 24L * from)
                    .with(equity == 0 ? 0L : equity + 4L * from)
                    .each("answer", now);
        }
    }
}
