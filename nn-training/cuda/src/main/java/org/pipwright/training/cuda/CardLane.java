package org.pipwright.training.cuda;

import java.util.List;
import org.bytedeco.cuda.cudart.CUstream_st;
import org.pipwright.engine.roll.Roll;

/** A lane's plays in pinned memory and their copy on the card. */
final class CardLane implements LaneJudge {
    final PlaysBatch plays;
    final long results;
    final long equity;
    final long starts;
    final long counts;
    final long rolls;
    private final CudaAccelerator card;

    /** Copying goes on while the card computes for another lane. */
    private final CUstream_st copying = Gpu.stream();

    CardLane(CudaAccelerator card, int positions) {
        this.card = card;
        plays = new PlaysBatch(positions, Gpu::pinned);
        results = Gpu.allocate(32L * plays.capacity);
        equity = Gpu.allocate(4L * plays.capacity);
        starts = Gpu.allocate(4L * Roll.COUNT * positions);
        counts = Gpu.allocate(4L * Roll.COUNT * positions);
        rolls = Gpu.allocate(4L * positions);
    }

    @Override
    public PlaysBatch plays() {
        return plays;
    }

    @Override
    public void upload() {
        Gpu.toCard(plays.results, results, 32L * plays.size(), copying);
        Gpu.toCard(plays.starts, starts, 4L * Roll.COUNT * plays.positions, copying);
        Gpu.toCard(plays.counts, counts, 4L * Roll.COUNT * plays.positions, copying);
        Gpu.toCard(plays.rolls, rolls, 4L * plays.positions, copying);
        Gpu.await(copying);
    }

    @Override
    public void judge() {
        card.lookahead().judge(this);
    }

    @Override
    public int kept() {
        return card.lookahead().lastKept();
    }

    @Override
    public void teach(long seed, float rate, List<Integer> nets) {
        card.teach(this, seed, rate, nets);
    }
}
