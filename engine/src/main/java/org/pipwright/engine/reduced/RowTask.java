package org.pipwright.engine.reduced;

/** Work on the cells of one opponent's arrangement and a range of the mover's. Called by several threads at once. */
@FunctionalInterface
interface RowTask {
    /**
     * Does it.
     *
     * @param opponent arrangement of the opponent, not 0
     * @param from first arrangement of the mover, not 0
     * @param to end of the range, exclusive
     * @return the largest change made, or another measure of which the largest counts
     */
    double run(int opponent, int from, int to);
}
