package org.pipwright.engine.explain;

import org.pipwright.engine.judge.PlayVerdict;

/**
 * A ranked play and the facts about it.
 *
 * @param ranked its place in the ranking, with equity, cost and chances
 * @param facts what it does to the board
 * @param swings what the opponent's rolls change
 */
public record ExplainedPlay(PlayVerdict ranked, PlayFacts facts, Swings swings) {
    /**
     * How much more often this play wins than another.
     *
     * @param other the other play
     * @return difference of chances, -1 to 1
     */
    public double moreWins(ExplainedPlay other) {
        return ranked.outcomes().win() - other.ranked.outcomes().win();
    }

    /**
     * How much more often it wins a gammon or backgammon than another.
     *
     * @param other the other play
     * @return difference of chances, -1 to 1
     */
    public double moreGammons(ExplainedPlay other) {
        return gammonsWon() - other.gammonsWon();
    }

    /**
     * How much more often it loses a gammon or backgammon than another.
     *
     * @param other the other play
     * @return difference of chances, -1 to 1
     */
    public double moreGammonsLost(ExplainedPlay other) {
        return gammonsLost() - other.gammonsLost();
    }

    /**
     * Chance to win a gammon or backgammon.
     *
     * @return 0 to 1
     */
    public double gammonsWon() {
        return ranked.outcomes().winGammon() + ranked.outcomes().winBackgammon();
    }

    /**
     * Chance to lose a gammon or backgammon.
     *
     * @return 0 to 1
     */
    public double gammonsLost() {
        return ranked.outcomes().loseGammon() + ranked.outcomes().loseBackgammon();
    }
}
