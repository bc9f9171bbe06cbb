package org.pipwright.engine.evaluation;

import org.pipwright.engine.PublicApi;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/**
 * Gives the six chances of positions. An instance serves one thread, since it may keep buffers.
 */
@PublicApi
public interface PositionEvaluator {
    /**
     * The six chances of an unfinished position before the roll.
     *
     * @param planes array that holds the position, as {@link Planes} describes
     * @param at index of its first plane
     * @param out where to write
     * @param outAt index of the first of six chances, for the side on roll, in the order of {@link Outcomes}
     */
    void evaluate(int[] planes, int at, float[] out, int outAt);

    /**
     * The six chances after each result of a roll, for the side that has just played. Finished games count as they ended.
     *
     * @param parent array that holds the position before the play
     * @param parentAt index of its first plane
     * @param results the results one after another, the mover's side first, as the play generator gives them
     * @param count number of results
     * @param out where to write six chances a result, for the mover
     */
    default void evaluateResults(int[] parent, int parentAt, int[] results, int count, float[] out) {
        int[] child = new int[Planes.STRIDE];
        for (int i = 0; i < count; i++) {
            int outAt = i * Outcomes.COUNT;
            if (FinishedGames.write(results, i * Planes.STRIDE, out, outAt)) {
                continue;
            }
            Planes.copySwapped(results, i * Planes.STRIDE, child, 0);
            evaluate(child, 0, out, outAt);
            Chances.swap(out, outAt);
        }
    }

    /**
     * A quicker evaluator that may drop results before this one judges the rest, where only the best of a roll counts.
     *
     * @return this evaluator itself if there is none; else always the same one, whose quick evaluator is itself
     */
    default PositionEvaluator quick() {
        return this;
    }

    /**
     * The six chances of a position.
     *
     * @param position any position, finished or not
     * @return the chances of the side on roll
     */
    default Outcomes evaluate(Position position) {
        int[] planes = position.toPlanes();
        float[] out = new float[Outcomes.COUNT];
        if (!FinishedGames.write(planes, 0, out, 0)) {
            evaluate(planes, 0, out, 0);
        }
        return Outcomes.of(out, 0);
    }
}
