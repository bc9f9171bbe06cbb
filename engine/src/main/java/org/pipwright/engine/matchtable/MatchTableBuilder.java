package org.pipwright.engine.matchtable;

import java.util.Arrays;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeWalk;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.WalkGame;
import org.pipwright.engine.score.MatchScore;

/**
 * Computes a match table from a stated model by going back from the end of the match: each game starts even, either side
 * is as likely to roll first, wins and losses split by fixed shares of gammons and backgammons, and the cube is used by
 * both sides as well as a {@link CubeWalk} allows. Nobody can double before the first roll. The Crawford game is played
 * without the cube; after it the recursion finds the trailer's early double and the leader's free pass by itself. That
 * double comes after one or two rolls, so those games have a walk of their own, with the smaller steps of opening rolls.
 */
public final class MatchTableBuilder {
    private final GammonShares shares;
    private final CubeWalk walk;
    private final CubeWalk opening;
    private final boolean cubeBeforeFirstRoll;
    private final double[][] chances;
    private final double[] postCrawford;

    private MatchTableBuilder(
            int length, GammonShares shares, CubeWalk walk, CubeWalk opening, boolean cubeBeforeFirstRoll) {
        this.shares = shares;
        this.walk = walk;
        this.opening = opening;
        this.cubeBeforeFirstRoll = cubeBeforeFirstRoll;
        chances = new double[length + 1][length + 1];
        postCrawford = new double[length + 1];
        // What is not known yet is never asked for: games lead to shorter scores. Even chances keep each entry valid.
        for (double[] row : chances) {
            Arrays.fill(row, 0.5);
        }
        Arrays.fill(postCrawford, 0.5);
    }

    /**
     * Computes a table.
     *
     * @param length points of the longest match, at least 1
     * @param gammons share of games won that are gammons, backgammons not counted
     * @param backgammons share that are backgammons
     * @param walk how chances move during a game
     * @param opening how they move in its first rolls
     * @return the table
     */
    public static MatchTable build(int length, double gammons, double backgammons, CubeWalk walk, CubeWalk opening) {
        return build(length, gammons, backgammons, walk, opening, false);
    }

    /** The same with the choice to let the cube be turned before the first roll, which the rules do not allow. */
    static MatchTable build(
            int length,
            double gammons,
            double backgammons,
            CubeWalk walk,
            CubeWalk opening,
            boolean cubeBeforeFirstRoll) {
        GammonShares shares = new GammonShares(gammons, backgammons, gammons, backgammons);
        MatchTableBuilder builder = new MatchTableBuilder(length, shares, walk, opening, cubeBeforeFirstRoll);
        for (int n = 2; n <= length; n++) {
            builder.postCrawford[n] = builder.game(new MatchScore(n, 1, false));
        }
        for (int n = 2; n <= length; n++) {
            builder.set(n, 1, builder.game(new MatchScore(n, 1, true)));
        }
        for (int sum = 4; sum <= 2 * length; sum++) {
            for (int a = Math.max(2, sum - length); 2 * a < sum; a++) {
                builder.set(a, sum - a, builder.game(new MatchScore(a, sum - a, false)));
            }
        }
        return new MatchTable(builder.chances, builder.postCrawford);
    }

    private void set(int a, int b, double chance) {
        chances[a][b] = chance;
        chances[b][a] = 1 - chance;
    }

    /** Chance of the side a score is seen from, with either side equally likely to be on roll first. */
    private double game(MatchScore score) {
        MatchTable soFar = MatchTable.unfinished(chances, postCrawford);
        WalkGame game = new WalkGame(score.postCrawford() ? opening : walk, new MatchPayoffs(soFar, score, shares));
        return (start(game, true) + start(game, false)) / 2;
    }

    private double start(WalkGame game, boolean onRoll) {
        return cubeBeforeFirstRoll
                ? game.value(CubeState.START, onRoll, 0.5)
                : game.rolling(CubeState.START, onRoll, 0.5);
    }
}
