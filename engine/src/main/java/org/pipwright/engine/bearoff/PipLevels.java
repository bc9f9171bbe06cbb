package org.pipwright.engine.bearoff;

import java.util.function.Supplier;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.position.Planes;

/**
 * Visits all arrangements of an index in the order of their pip counts. Every play lowers the pip count, so what a level
 * needs is known when its turn comes, and the arrangements of one level may be computed side by side.
 */
final class PipLevels {
    /** Arrangements a thread takes at a time. */
    private final int batch;

    private final int[] order;
    private final int[] starts;

    PipLevels(SideIndex index, int batch) {
        this.batch = batch;
        int[] pips = new int[index.size()];
        int[] planes = new int[Planes.SIDE];
        int most = 0;
        for (int i = 0; i < pips.length; i++) {
            index.write(i, planes, 0);
            pips[i] = Planes.pips(planes, 0);
            most = Math.max(most, pips[i]);
        }
        starts = new int[most + 2];
        for (int count : pips) {
            starts[count + 1]++;
        }
        for (int level = 1; level < starts.length; level++) {
            starts[level] += starts[level - 1];
        }
        int[] next = starts.clone();
        order = new int[pips.length];
        for (int i = 0; i < pips.length; i++) {
            order[next[pips[i]]++] = i;
        }
    }

    /** Computes one arrangement; each thread has its own. */
    interface Worker {
        void compute(int index);
    }

    /** Runs workers over all arrangements, level by level; reports the share done after each level. */
    void run(int threads, Supplier<Worker> workers, TableProgress progress) {
        try (Crew<Worker> crew = new Crew<>(threads, workers)) {
            for (int level = 0; level + 1 < starts.length; level++) {
                int start = starts[level];
                int end = starts[level + 1];
                crew.run((end - start + batch - 1) / batch, (worker, task) -> {
                    int from = start + task * batch;
                    for (int i = from; i < Math.min(from + batch, end); i++) {
                        worker.compute(order[i]);
                    }
                });
                progress.done((double) end / order.length);
            }
        }
    }
}
