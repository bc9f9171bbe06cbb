package org.pipwright.engine.cube;

import org.pipwright.engine.evaluation.FinishedGames;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rules.GameResult;

/**
 * What a play is worth to the side that makes it: the game it has won, or what the opponent, who may double next, leaves
 * it. Serves one thread.
 */
public final class AfterPlay {
    private final int[] child = new int[Planes.STRIDE];
    private final float[] finished = new float[Outcomes.COUNT];

    /** Creates one. */
    public AfterPlay() {}

    /**
     * The worth of a result of a roll.
     *
     * @param terms what is played for, seen from the side that plays
     * @param cube the cube, seen from that side
     * @param results the results of a roll, the mover's side first, as the play generator gives them
     * @param at index of the first plane of one of them
     * @param chances six chances of the mover after it
     * @param chancesAt index of the first of them
     * @return value to the mover, in the unit of the cube
     */
    public double worth(CubeTerms terms, CubeState cube, int[] results, int at, float[] chances, int chancesAt) {
        Planes.copySwapped(results, at, child, 0);
        if (FinishedGames.write(child, 0, finished, 0)) {
            return terms.won(GameResult.of(child, 0), cube);
        }
        Outcomes theirs = Outcomes.of(chances, chancesAt).swapped();
        return terms.toOther(terms.swapped().best(Position.ofPlanes(child, 0), theirs, cube.swapped()));
    }
}
