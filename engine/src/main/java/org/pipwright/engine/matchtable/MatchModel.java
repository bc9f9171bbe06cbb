package org.pipwright.engine.matchtable;

import org.pipwright.engine.cube.CubeCurves;
import org.pipwright.engine.cube.CubeModel;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.CubeWalk;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.WalkGame;

/**
 * Cube values at a match score: the game is taken for a {@link CubeWalk} with the position's own shares of gammons, its
 * endings are worth what a {@link MatchTable} says, and both sides use every level of the cube as well as they can. Dead
 * cubes, gammons that win the match, the leader's free pass and the trailer's automatic double after the Crawford game
 * follow from that without rules of their own. Values are chances to win the match.
 *
 * @param stakes the score, seen from the side on roll
 * @param table chances after the game
 * @param walk how chances move
 */
public record MatchModel(MatchStakes stakes, MatchTable table, CubeWalk walk) implements CubeModel {
    @Override
    public CubeCurves curves(GammonShares shares, CubeState cube) {
        WalkGame game = game(shares);
        boolean mayDouble = stakes.mayDouble(cube);
        double pass = table.chanceAfter(stakes.score(), cube.value());
        return win -> {
            double roll = game.rolling(cube, true, win);
            double take = mayDouble ? game.doubleTake(cube, win) : roll;
            return new CubeValues(mayDouble, false, roll, take, pass, take);
        };
    }

    /** The game of one split of wins and losses, for "me" on roll. */
    WalkGame game(GammonShares shares) {
        return new WalkGame(walk, new MatchPayoffs(table, stakes.score(), shares));
    }
}
