package org.pipwright.engine.reduced;

import org.pipwright.engine.parallel.Crew;

/**
 * Runs a task over all cells by rising total pip count of both sides: every play without a hit leads to a smaller total,
 * so its value is already new (the Gauss-Seidel order for this game). Cells of one total are shared among threads.
 *
 * <p>A play that hits, or no move, may lead to a cell of the same total, which another thread may be writing: the reader
 * then gets the old value or the new one (JVMs on 64-bit machines write a double or float whole), either of which will do.
 */
final class Sweeper implements AutoCloseable {
    /** Opponents taken at a time by one thread; so few are not worth sharing. */
    private static final int BLOCK = 64;

    private final Sides sides;
    private final Crew<double[]> crew;

    Sweeper(Sides sides, int threads) {
        this.sides = sides;
        crew = new Crew<>(threads, () -> new double[1]);
    }

    /** Runs a task over all cells but those of finished games, empty ones included; returns the largest result. */
    double ascending(RowTask task) {
        for (double[] largest : crew.workers()) {
            largest[0] = 0;
        }
        for (int total = 2; total <= 2 * sides.mostPips(); total++) {
            level(task, total);
        }
        return crew.workers().stream().mapToDouble(largest -> largest[0]).max().orElseThrow();
    }

    private void level(RowTask task, int total) {
        int first = sides.firstOfPips(Math.max(1, total - sides.mostPips()));
        int last = sides.firstOfPips(Math.min(total - 1, sides.mostPips()) + 1);
        crew.run((last - first + BLOCK - 1) / BLOCK, (largest, block) -> {
            int from = first + block * BLOCK;
            largest[0] = Math.max(largest[0], rows(task, total, from, Math.min(from + BLOCK, last)));
        });
    }

    private double rows(RowTask task, int total, int first, int last) {
        double largest = 0;
        for (int opponent = first; opponent < last; opponent++) {
            int pips = total - sides.pips(opponent);
            int from = sides.firstOfPips(pips);
            int to = sides.firstOfPips(pips + 1);
            if (from < to) {
                largest = Math.max(largest, task.run(opponent, from, to));
            }
        }
        return largest;
    }

    @Override
    public void close() {
        crew.close();
    }
}
