package org.pipwright.engine.explain;

import org.pipwright.engine.cube.GammonValues;
import org.pipwright.engine.evaluation.Outcomes;

/**
 * What a better play has over a weaker one, taken apart into games won, gammons won and gammons lost, each in points per
 * game with a single game at one point and gammons at what they are worth under the stakes. In money play, or without a cube,
 * the three add up to the difference of the cubeless equities.
 *
 * @param wins by games won more often
 * @param gammonsWon by gammons and backgammons won more often
 * @param gammonsLost by gammons and backgammons lost less often
 */
public record ChancesApart(double wins, double gammonsWon, double gammonsLost) {
    /**
     * Takes a difference apart.
     *
     * @param best chances after the better play
     * @param rival chances after the weaker one
     * @param gammons what gammons are worth
     * @return the parts, negative where the weaker play does better
     */
    public static ChancesApart of(Outcomes best, Outcomes rival, GammonValues gammons) {
        return new ChancesApart(
                2 * (best.win() - rival.win()),
                2 * gammons.mine() * (won(best) - won(rival)),
                2 * gammons.theirs() * (won(rival.swapped()) - won(best.swapped())));
    }

    /** Gammons won, backgammons counting two. */
    private static double won(Outcomes chances) {
        return chances.winGammon() + 2 * chances.winBackgammon();
    }

    /**
     * All of it.
     *
     * @return points per game
     */
    public double sum() {
        return wins + gammonsWon + gammonsLost;
    }
}
