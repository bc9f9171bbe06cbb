package org.pipwright.training.cuda;

import java.nio.ByteBuffer;
import org.bytedeco.cuda.cudart.CUstream_st;

/** The lessons of late, on the card: positions and target chances; the newest replace the oldest. */
final class LessonMemory {
    final long planes;
    final long targets;
    private final int capacity;
    private final CUstream_st stream;
    private final ByteBuffer stagedPlanes;
    private final ByteBuffer stagedTargets;
    private final int staging;
    private int next;
    private int size;

    LessonMemory(int capacity, int staging, CUstream_st stream) {
        this.capacity = capacity;
        this.staging = staging;
        this.stream = stream;
        planes = Gpu.allocate(32L * capacity);
        targets = Gpu.allocate(24L * capacity);
        stagedPlanes = Gpu.pinned(32L * staging);
        stagedTargets = Gpu.pinned(24L * staging);
    }

    /** Lessons there are to draw from. */
    int size() {
        return size;
    }

    /** Takes lessons in: eight ints and six floats each. */
    void add(int[] positions, float[] chances, int count) {
        int from = 0;
        while (from < count) {
            int now = Math.min(Math.min(staging, count - from), capacity - next);
            stagedPlanes.asIntBuffer().put(positions, 8 * from, 8 * now);
            stagedTargets.asFloatBuffer().put(chances, 6 * from, 6 * now);
            Gpu.toCard(stagedPlanes, planes + 32L * next, 32L * now, stream);
            Gpu.toCard(stagedTargets, targets + 24L * next, 24L * now, stream);
            Gpu.await(stream);
            next = (next + now) % capacity;
            size = Math.min(capacity, size + now);
            from += now;
        }
    }
}
