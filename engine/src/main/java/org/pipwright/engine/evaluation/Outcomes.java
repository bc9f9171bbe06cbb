package org.pipwright.engine.evaluation;

import java.io.Serializable;
import java.util.Locale;
import org.pipwright.engine.PublicApi;

/**
 * The six mutually exclusive chances of a game, seen from one side. Each is in [0, 1] and together they sum to 1.
 *
 * @param winSingle chance to win a single game
 * @param winGammon chance to win a gammon, backgammons not counted
 * @param winBackgammon chance to win a backgammon
 * @param loseSingle chance to lose a single game
 * @param loseGammon chance to lose a gammon, backgammons not counted
 * @param loseBackgammon chance to lose a backgammon
 */
@PublicApi
public record Outcomes(
        double winSingle,
        double winGammon,
        double winBackgammon,
        double loseSingle,
        double loseGammon,
        double loseBackgammon)
        implements Serializable {

    /** Number of outcomes. */
    public static final int COUNT = 6;

    /** How far the sum may be from 1: six chances rounded to float. */
    private static final double TOLERANCE = 1e-5;

    /**
     * Checks that the chances are a distribution.
     *
     * @param winSingle in [0, 1]
     * @param winGammon in [0, 1]
     * @param winBackgammon in [0, 1]
     * @param loseSingle in [0, 1]
     * @param loseGammon in [0, 1]
     * @param loseBackgammon in [0, 1]
     * @throws IllegalArgumentException if one is negative or not a number, or they do not sum to 1
     */
    public Outcomes {
        double sum = winSingle + winGammon + winBackgammon + loseSingle + loseGammon + loseBackgammon;
        double least = Math.min(
                Math.min(Math.min(winSingle, winGammon), Math.min(winBackgammon, loseSingle)),
                Math.min(loseGammon, loseBackgammon));
        if (!(Math.abs(sum - 1) <= TOLERANCE && least >= 0)) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT, "six chances must be at least 0 and sum to 1, but sum to %s, least %s", sum, least));
        }
    }

    /**
     * Six chances from an array, in the order of the components.
     *
     * @param chances array to read from
     * @param at index of the first of six
     * @return the outcomes
     */
    public static Outcomes of(float[] chances, int at) {
        return new Outcomes(
                chances[at], chances[at + 1], chances[at + 2], chances[at + 3], chances[at + 4], chances[at + 5]);
    }

    /**
     * Chance to win at all.
     *
     * @return sum of the three winning chances
     */
    public double win() {
        return winSingle + winGammon + winBackgammon;
    }

    /**
     * Cubeless equity: points per game for the side whose chances these are.
     *
     * @return between -3 and 3
     */
    public double equity() {
        return winSingle + 2 * winGammon + 3 * winBackgammon - loseSingle - 2 * loseGammon - 3 * loseBackgammon;
    }

    /**
     * The same chances seen from the other side.
     *
     * @return wins and losses exchanged
     */
    public Outcomes swapped() {
        return new Outcomes(loseSingle, loseGammon, loseBackgammon, winSingle, winGammon, winBackgammon);
    }
}
