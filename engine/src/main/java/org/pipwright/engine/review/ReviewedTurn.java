package org.pipwright.engine.review;

import java.util.List;
import org.pipwright.engine.evaluation.Outcomes;

/**
 * A turn, what was found about it, and what it says of the decisions in it.
 *
 * @param moment the turn
 * @param finding what was found
 * @param decisions the decisions, in their order
 * @param luckTotal luck of the roll in what counts in the end: points of the game, or chance to win the match; 0 without
 *     a roll
 * @param luckPoints the same in points per unit of the cube, in a match as {@link Decision#points()}
 */
public record ReviewedTurn(
        Moment moment, Finding finding, List<Decision> decisions, double luckTotal, double luckPoints) {
    /**
     * Keeps the decisions.
     *
     * @param moment the turn
     * @param finding what was found
     * @param decisions the decisions
     * @param luckTotal luck in what counts
     * @param luckPoints luck in points
     */
    public ReviewedTurn {
        decisions = List.copyOf(decisions);
    }

    /**
     * The six chances before the turn as a side sees them.
     *
     * @param side 0 or 1
     * @return its chances in this game
     */
    public Outcomes chances(int side) {
        return moment.onRoll() == side ? finding.chances() : finding.chances().swapped();
    }

    /**
     * Whether the turn has a decision that counts.
     *
     * @return false if everything was forced or plain
     */
    public boolean counted() {
        return decisions.stream().anyMatch(Decision::counted);
    }
}
