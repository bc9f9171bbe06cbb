package org.pipwright.training.cuda;

import java.nio.ByteBuffer;
import org.bytedeco.cuda.cudart.CUstream_st;
import org.pipwright.engine.roll.Roll;

/**
 * Lookahead by one roll on the card: a quick network drops most results, the deep one judges what is left, and the best
 * replies' chances are averaged over the 21 rolls.
 */
final class Lookahead {
    private final CardAnswers deep;
    private final CardAnswers quick;
    private final float margin;
    private final CUstream_st stream;
    private final long kept;
    private final long keptCounts;
    private final long keptFirst;
    private final long keptTotal;
    private final long keptChances;
    private final long expected;
    private final long thrownCounts;
    private final long thrownResults;
    private final long thrownChances;
    private final ByteBuffer hostTotal = Gpu.pinned(4);
    private int lastKept;

    Lookahead(CardAnswers deep, CardAnswers quick, float margin, int positions) {
        this.deep = deep;
        this.quick = quick;
        this.margin = margin;
        this.stream = deep.kernels().stream();
        int groups = positions * Roll.COUNT;
        kept = Gpu.allocate(4L * groups * PlaysBatch.SLOTS);
        keptCounts = Gpu.allocate(4L * groups);
        keptFirst = Gpu.allocate(4L * groups);
        keptTotal = Gpu.allocate(4);
        keptChances = Gpu.allocate(24L * groups * PlaysBatch.SLOTS);
        expected = Gpu.allocate(24L * positions);
        thrownCounts = Gpu.allocate(4L * positions);
        thrownResults = Gpu.allocate(4L * PlaysBatch.SLOTS * positions);
        thrownChances = Gpu.allocate(24L * PlaysBatch.SLOTS * positions);
    }

    /** Judges a batch that is on the card and brings the answers back. */
    void judge(CardLane lane) {
        PlaysBatch batch = lane.plays;
        int groups = batch.positions * Roll.COUNT;
        quick.answer(lane.results, 0, true, batch.size(), 0, lane.equity);
        Gpu.clear(keptTotal, 4, stream);
        deep.kernels()
                .with(lane.equity)
                .with(lane.starts)
                .with(lane.counts)
                .with(groups)
                .with(margin)
                .with(PlaysBatch.SLOTS)
                .with(kept)
                .with(keptCounts)
                .with(keptFirst)
                .with(keptTotal)
                .warps("keep", groups);
        Gpu.fromCard(keptTotal, hostTotal, 4, stream);
        Gpu.await(stream);
        lastKept = hostTotal.getInt(0);
        deep.answer(lane.results, kept, true, lastKept, keptChances, 0);
        deep.kernels()
                .with(keptChances)
                .with(kept)
                .with(keptCounts)
                .with(keptFirst)
                .with(lane.rolls)
                .with(batch.positions)
                .with(expected)
                .with(thrownCounts)
                .with(thrownResults)
                .with(thrownChances)
                .warps("expect", batch.positions);
        Gpu.fromCard(expected, batch.expected, 24L * batch.positions, stream);
        Gpu.fromCard(thrownCounts, batch.thrownCounts, 4L * batch.positions, stream);
        Gpu.fromCard(thrownResults, batch.thrownResults, 4L * PlaysBatch.SLOTS * batch.positions, stream);
        Gpu.fromCard(thrownChances, batch.thrownChances, 24L * PlaysBatch.SLOTS * batch.positions, stream);
    }

    /** Results the deep network judged in the last call. */
    int lastKept() {
        return lastKept;
    }

    /** Where those results' numbers in their batch lie. */
    long keptOnCard() {
        return kept;
    }

    /** Where those results' chances lie, for the side that played. */
    long chancesOnCard() {
        return keptChances;
    }
}
