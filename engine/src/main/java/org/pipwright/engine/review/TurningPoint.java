package org.pipwright.engine.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A roll or a decision that changed much.
 *
 * @param turn the turn it belongs to
 * @param decision the decision; empty if it was the roll
 * @param side who rolled or decided, 0 or 1
 * @param change what it brought that side, in what counts in the end: points of the game, or chance to win the match
 */
public record TurningPoint(ReviewedTurn turn, Optional<Decision> decision, int side, double change) {
    static List<TurningPoint> of(ReviewedTurn turn) {
        List<TurningPoint> points = new ArrayList<>();
        if (turn.finding().luck().isPresent()) {
            points.add(new TurningPoint(turn, Optional.empty(), turn.moment().onRoll(), turn.luckTotal()));
        }
        for (Decision decision : turn.decisions()) {
            points.add(new TurningPoint(turn, Optional.of(decision), decision.side(), decision.total()));
        }
        return points;
    }
}
