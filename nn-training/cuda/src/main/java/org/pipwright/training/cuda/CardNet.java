package org.pipwright.training.cuda;

import java.nio.ByteBuffer;
import java.nio.FloatBuffer;
import org.bytedeco.cuda.cudart.CUstream_st;

/**
 * A residual network on the card, with what learning needs. It answers with the running average of its weights as it was
 * when {@link #freeze} was last called; {@link CardLearner} changes the weights themselves.
 */
final class CardNet implements CardAnswers {
    /** Rows of products are a multiple of this, so that few different shapes of products arise. */
    private static final int ROUND = 256;

    final ResidualShape shape;
    final CUstream_st stream;
    final Kernels kernels;
    final Products products;

    /** Master weights, the moments of Adam and the average: floats, {@code shape.size()} each. */
    final long weights;

    final long firstMoments;
    final long secondMoments;
    final long average;

    /** Weights in two bytes: those being learned as bfloat16 and the frozen average as IEEE halves. */
    final long narrowed;

    final long frozen;

    /** Biases added up from block to block, for the weights being learned and the frozen ones. */
    final long summedBiases;

    final long frozenBiases;

    private final long frozenFloats;
    private final long biasOffsets;
    private final Scratch scratch;
    private long steps;

    CardNet(ResidualShape shape, float[] initial, int rowsAtOnce, CUstream_st stream, Products products) {
        this.shape = shape;
        this.stream = stream;
        this.products = products;
        kernels = new Kernels(shape.width(), stream);
        long floats = 4L * shape.size();
        weights = Gpu.allocate(floats);
        firstMoments = Gpu.allocate(floats);
        secondMoments = Gpu.allocate(floats);
        average = Gpu.allocate(floats);
        frozenFloats = Gpu.allocate(floats);
        narrowed = Gpu.allocate(2L * shape.size());
        frozen = Gpu.allocate(2L * shape.size());
        summedBiases = Gpu.allocate(4L * shape.width() * (shape.blocks() + 1));
        frozenBiases = Gpu.allocate(4L * shape.width() * (shape.blocks() + 1));
        biasOffsets = offsets();
        scratch = new Scratch(shape.width(), rowsAtOnce);
        Gpu.clear(firstMoments, floats, stream);
        Gpu.clear(secondMoments, floats, stream);
        write(weights, initial);
        write(average, initial);
        refresh();
        freeze();
    }

    private long offsets() {
        ByteBuffer host = Gpu.pinned(8L * shape.blocks());
        for (int k = 0; k < shape.blocks(); k++) {
            host.putLong(8 * k, shape.bBias(k));
        }
        long memory = Gpu.allocate(8L * shape.blocks());
        Gpu.toCard(host, memory, 8L * shape.blocks(), stream);
        Gpu.await(stream);
        Gpu.unpin(host);
        return memory;
    }

    /** Copies floats to one of the arrays of weights. */
    void write(long to, float[] values) {
        ByteBuffer host = Gpu.pinned(4L * values.length);
        host.asFloatBuffer().put(values);
        Gpu.toCard(host, to, 4L * values.length, stream);
        Gpu.await(stream);
        Gpu.unpin(host);
    }

    /** Copies one of the arrays of weights from the card. */
    float[] read(long from) {
        float[] values = new float[shape.size()];
        ByteBuffer host = Gpu.pinned(4L * values.length);
        Gpu.fromCard(from, host, 4L * values.length, stream);
        Gpu.await(stream);
        FloatBuffer floats = host.asFloatBuffer();
        floats.get(values);
        Gpu.unpin(host);
        return values;
    }

    /** Makes what depends on the master weights anew. */
    void refresh() {
        kernels.with(weights).with(narrowed).with(shape.size()).each("narrowAll", shape.size());
        addUp(weights, summedBiases);
    }

    /** Takes the average as it is now for all answers from now on. */
    void freeze() {
        Gpu.ok(
                org.bytedeco.cuda.global.cudart.cudaMemcpyAsync(
                        new Gpu.Address(frozenFloats), new Gpu.Address(average), 4L * shape.size(), 3, stream),
                "copying the average");
        kernels.with(frozenFloats).with(frozen).with(shape.size()).each("halveAll", shape.size());
        addUp(frozenFloats, frozenBiases);
    }

    void addUp(long floats, long to) {
        kernels.with(at(floats, shape.inputBias()))
                .with(floats)
                .with(biasOffsets)
                .with(shape.blocks())
                .with(to)
                .each("addUp", shape.width());
    }

    /** Address of an element of an array of floats. */
    static long at(long floats, long element) {
        return floats + 4 * element;
    }

    /** Address of an element of an array of two-byte numbers. */
    static long narrowAt(long numbers, long element) {
        return numbers + 2 * element;
    }

    /** Steps of learning so far. */
    long steps() {
        return steps;
    }

    /** Sets the number of steps of learning so far. */
    void steps(long count) {
        steps = count;
    }

    @Override
    public Kernels kernels() {
        return kernels;
    }

    /** Asks the frozen network. */
    @Override
    public void answer(long planes, long index, boolean swap, int rows, long chances, long equity) {
        for (int from = 0; from < rows; from += scratch.rows) {
            int now = Math.min(scratch.rows, rows - from);
            long positions = index == 0 ? planes + 32L * from : planes;
            long indexes = index == 0 ? 0 : index + 4L * from;
            scores(positions, indexes, swap, now);
            kernels.with(scratch.logits)
                    .with(at(frozenFloats, shape.outputBias()))
                    .with(positions)
                    .with(indexes)
                    .with(swap ? 1 : 0)
                    .with(now)
                    .with(chances == 0 ? 0L : chances + 24L * from)
                    .with(equity == 0 ? 0L : equity + 4L * from)
                    .each("answer", now);
        }
    }

    private void scores(long positions, long indexes, boolean swap, int rows) {
        int width = shape.width();
        int padded = Math.min(scratch.rows, (rows + ROUND - 1) / ROUND * ROUND);
        kernels.with(positions)
                .with(indexes)
                .with(swap ? 1 : 0)
                .with(rows)
                .with(padded)
                .with(1)
                .with(scratch.features)
                .warps("encode", padded);
        products.multiply(
                scratch.features,
                frozen,
                scratch.hidden,
                padded,
                ResidualShape.INPUTS,
                width,
                false,
                Products.Kind.HALF);
        for (int k = 0; k < shape.blocks(); k++) {
            norm(k, padded);
            products.rectified(
                    scratch.normed,
                    narrowAt(frozen, shape.a(k)),
                    narrowAt(frozen, shape.aBias(k)),
                    scratch.inner,
                    padded,
                    width,
                    Products.Kind.HALF);
            products.multiply(
                    scratch.inner,
                    narrowAt(frozen, shape.b(k)),
                    scratch.hidden,
                    padded,
                    width,
                    width,
                    true,
                    Products.Kind.HALF);
        }
        norm(shape.blocks(), padded);
        products.multiply(
                scratch.normed,
                narrowAt(frozen, shape.output()),
                scratch.logits,
                padded,
                width,
                ResidualShape.OUTPUTS,
                false,
                Products.Kind.HALF_TO_FLOAT);
    }

    private void norm(int level, int rows) {
        kernels.with(scratch.hidden)
                .with(at(frozenBiases, (long) level * shape.width()))
                .with(rows)
                .with(scratch.normed)
                .warps("layerNormHalf", rows);
    }
}
