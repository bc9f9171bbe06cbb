package org.pipwright.engine.cube;

import org.pipwright.engine.PublicApi;
import org.pipwright.engine.rules.GameResult;
import org.pipwright.engine.score.MatchScore;

/**
 * A game of a match. There is no Jacoby rule and there are no beavers in matches, and no doubling in the Crawford game.
 *
 * @param score the score before the game, seen from the side on roll
 */
@PublicApi
public record MatchStakes(MatchScore score) implements Stakes {
    @Override
    public boolean mayDouble(CubeState cube) {
        return cube.turnable() && !score.crawford();
    }

    @Override
    public boolean mayBeaver(CubeState cube) {
        return false;
    }

    @Override
    public int points(GameResult result, CubeState cube) {
        return result.points(cube.value());
    }

    /**
     * Whether the cube is of no more use to its owner, who already wins the match with a single game at its value.
     *
     * @param cube the cube, seen from the side on roll
     * @return true if it is owned and its owner needs no more than it shows
     */
    public boolean dead(CubeState cube) {
        switch (cube.owner()) {
            case ME:
                return score.mine() <= cube.value();
            case THEM:
                return score.theirs() <= cube.value();
            default:
                return false;
        }
    }

    /**
     * Whether the side on roll wins the match with a single game at the present cube, so that a double gains it nothing.
     *
     * @param cube the cube, seen from the side on roll
     * @return true if it needs no more points than the cube shows
     */
    public boolean winsAnyway(CubeState cube) {
        return score.mine() <= cube.value();
    }

    @Override
    public MatchStakes swapped() {
        return new MatchStakes(score.swapped());
    }
}
