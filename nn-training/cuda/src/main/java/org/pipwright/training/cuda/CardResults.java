package org.pipwright.training.cuda;

import java.nio.ByteBuffer;
import java.nio.IntBuffer;
import org.bytedeco.cuda.cudart.CUstream_st;

/** Results in pinned memory that a network on the card is asked about. */
final class CardResults implements ResultJudge {
    private final CudaAccelerator card;
    private final ByteBuffer results;
    private final IntBuffer ints;
    private final ByteBuffer equities;
    private final long cardResults;
    private final long cardEquities;

    CardResults(CudaAccelerator card, int capacity) {
        this.card = card;
        results = Gpu.pinned(32L * capacity);
        ints = results.asIntBuffer();
        equities = Gpu.pinned(4L * capacity);
        cardResults = Gpu.allocate(32L * capacity);
        cardEquities = Gpu.allocate(4L * capacity);
    }

    @Override
    public IntBuffer results() {
        return ints;
    }

    @Override
    public void judge(int index, int rows) {
        CardAnswers net = card.answering(index);
        CUstream_st stream = net.kernels().stream();
        Gpu.toCard(results, cardResults, 32L * rows, stream);
        net.answer(cardResults, 0, true, rows, 0, cardEquities);
        Gpu.fromCard(cardEquities, equities, 4L * rows, stream);
        Gpu.await(stream);
    }

    @Override
    public float equity(int row) {
        return equities.getFloat(4 * row);
    }
}
