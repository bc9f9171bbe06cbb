package org.pipwright.engine.matchtable;

import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.Payoffs;
import org.pipwright.engine.score.MatchScore;

/** What the endings of a game are worth in a match: chances to win the match, by a table. */
public final class MatchPayoffs implements Payoffs {
    private final MatchTable table;
    private final MatchScore score;
    private final GammonShares shares;

    /**
     * Payoffs to one side.
     *
     * @param table chances after the game
     * @param score the score before it, seen from that side
     * @param shares how its wins and losses split
     */
    public MatchPayoffs(MatchTable table, MatchScore score, GammonShares shares) {
        this.table = table;
        this.score = score;
        this.shares = shares;
    }

    @Override
    public double played(boolean won, CubeState cube) {
        double gammon = won ? shares.winGammon() : shares.loseGammon();
        double backgammon = won ? shares.winBackgammon() : shares.loseBackgammon();
        int value = won ? cube.value() : -cube.value();
        return (1 - gammon - backgammon) * table.chanceAfter(score, value)
                + gammon * table.chanceAfter(score, 2 * value)
                + backgammon * table.chanceAfter(score, 3 * value);
    }

    /**
     * What a game is worth whose cube nobody turns any more.
     *
     * @param cube seen from this side
     * @param win its chance to win the game
     * @return its chance to win the match
     */
    public double dead(CubeState cube, double win) {
        return win * played(true, cube) + (1 - win) * played(false, cube);
    }

    @Override
    public double passed(boolean won, int cube) {
        return table.chanceAfter(score, won ? cube : -cube);
    }

    @Override
    public boolean cubeMatters(int cube) {
        return !score.crawford() && cube < Math.max(score.mine(), score.theirs());
    }
}
