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
 * endings are worth what a {@link MatchTable} says, and both sides use every level of the cube as well as they can, of an
 * owned cube with the {@link CubeUse} of the position. Dead cubes, gammons that win the match, the leader's free pass and the
 * trailer's automatic double after the Crawford game follow from that without rules of their own. Values are chances to win
 * the match.
 *
 * @param stakes the score, seen from the side on roll
 * @param table chances after the game
 * @param use how chances move, and how owned cubes are used
 */
record MatchModel(MatchStakes stakes, MatchTable table, CubeUse use) implements CubeModel {
    @Override
    public CubeCurves curves(GammonShares shares, CubeState cube) {
        MatchPayoffs payoffs = new MatchPayoffs(table, stakes.score(), shares);
        WalkGame game = new WalkGame(use.walk(), payoffs);
        boolean mayDouble = stakes.mayDouble(cube);
        double pass = table.chanceAfter(stakes.score(), cube.value());
        return win -> {
            double roll = rolling(game, payoffs, cube, win);
            double take = mayDouble ? rolling(game, payoffs, cube.taken(), win) : roll;
            return new CubeValues(mayDouble, false, roll, take, pass, take);
        };
    }

    private double rolling(WalkGame game, MatchPayoffs payoffs, CubeState cube, double win) {
        return use.rolling(stakes.score(), cube, win, payoffs.dead(cube, win), game.rolling(cube, true, win));
    }
}
