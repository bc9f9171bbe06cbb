package org.pipwright.training.cuda;

import java.nio.ByteBuffer;
import org.bytedeco.cuda.cudart.CUstream_st;

/** Static chances of positions of this machine, by a network on the card. */
final class Asker {
    private final int capacity;
    private final ByteBuffer planes;
    private final ByteBuffer chances;
    private final long cardPlanes;
    private final long cardChances;

    Asker(int capacity) {
        this.capacity = capacity;
        planes = Gpu.pinned(32L * capacity);
        chances = Gpu.pinned(24L * capacity);
        cardPlanes = Gpu.allocate(32L * capacity);
        cardChances = Gpu.allocate(24L * capacity);
    }

    /** The six chances of the first so many positions, for the side on roll. */
    void ask(CardAnswers net, int[] positions, int count, float[] out) {
        CUstream_st stream = net.kernels().stream();
        for (int from = 0; from < count; from += capacity) {
            int now = Math.min(capacity, count - from);
            planes.asIntBuffer().put(positions, 8 * from, 8 * now);
            Gpu.toCard(planes, cardPlanes, 32L * now, stream);
            net.answer(cardPlanes, 0, false, now, cardChances, 0);
            Gpu.fromCard(cardChances, chances, 24L * now, stream);
            Gpu.await(stream);
            chances.asFloatBuffer().get(out, 6 * from, 6 * now);
        }
    }
}
