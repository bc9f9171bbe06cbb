package org.pipwright.bench.cube;

import java.util.List;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.WalkGame;
import org.pipwright.engine.matchtable.CubeUse;
import org.pipwright.engine.matchtable.MatchPayoffs;
import org.pipwright.engine.score.MatchScore;

/**
 * A position of a match with what rolling is really worth there with each of {@link #CUBES}, and what the walk makes of it.
 *
 * @param score seen from the side on roll
 * @param use what the shipped model takes the position for
 * @param payoffs at the score, with the position's gammons
 * @param win chance to win the game
 * @param truth a value a cube, chances to win the match
 * @param errors standard errors of these; 0 where they are exact
 * @param walked values by the walk
 */
record MatchKnown(
        MatchScore score,
        CubeUse use,
        MatchPayoffs payoffs,
        double win,
        double[] truth,
        double[] errors,
        double[] walked) {
    /** In the centre, owned by the opponent, as after a double, and by the side on roll. */
    static final List<CubeState> CUBES =
            List.of(CubeState.START, CubeState.START.taken(), new CubeState(2, CubeOwner.ME));

    static MatchKnown of(
            MatchScore score,
            CubeUse use,
            MatchPayoffs payoffs,
            double win,
            double[] truth,
            double[] errors,
            WalkGame walk) {
        double[] walked = CUBES.stream()
                .mapToDouble(cube -> walk.rolling(cube, true, win))
                .toArray();
        return new MatchKnown(score, use, payoffs, win, truth, errors, walked);
    }

    /** What the shipped model makes of it, with another efficiency if one is given. */
    double[] model(CubeUse with) {
        double[] values = new double[CUBES.size()];
        for (int k = 0; k < values.length; k++) {
            CubeState cube = CUBES.get(k);
            values[k] = with.rolling(score, cube, win, payoffs.dead(cube, win), walked[k]);
        }
        return values;
    }

    /** The values of the actions with the cube in the centre, given those of rolling. */
    CubeValues values(double[] rolling) {
        return new CubeValues(true, false, rolling[0], rolling[1], payoffs.passed(true, 1), rolling[1]);
    }
}
