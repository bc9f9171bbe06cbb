package org.pipwright.engine.cube;

import java.io.Serializable;
import java.util.List;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.rules.GameResult;

/** What a game is played for, as far as it decides what may be done with the cube and what an ending is worth. */
@PublicApi
public sealed interface Stakes extends Serializable permits CubelessStakes, MoneyStakes, MatchStakes {
    /**
     * Whether the side on roll may double before it rolls.
     *
     * @param cube the cube, seen from the side on roll
     * @return true if doubling is allowed; whether it makes sense is another question
     */
    boolean mayDouble(CubeState cube);

    /**
     * Whether a double may be answered by a beaver.
     *
     * @param cube the cube before the double, seen from the side that doubles
     * @return true if beavers are agreed and the cube can show four times its value
     */
    boolean mayBeaver(CubeState cube);

    /**
     * The cubes with which a side may come to roll: the one it has, and if it may double the cube after a take, and that
     * after a beaver.
     *
     * @param cube the cube, seen from the side on roll
     * @return one to three cubes, seen from the side on roll
     */
    default List<CubeState> cubesToRollWith(CubeState cube) {
        if (!mayDouble(cube)) {
            return List.of(cube);
        }
        return mayBeaver(cube) ? List.of(cube, cube.taken(), cube.beavered()) : List.of(cube, cube.taken());
    }

    /**
     * What a game played to its end is worth.
     *
     * @param result single, gammon or backgammon
     * @param cube the cube at the end, seen from either side
     * @return points for the winner, positive; a match winner may need fewer
     */
    int points(GameResult result, CubeState cube);

    /**
     * The same stakes seen from the other side.
     *
     * @return sides exchanged
     */
    Stakes swapped();
}
