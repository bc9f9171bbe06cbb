package org.pipwright.engine.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.regime.RandomBoards;
import org.pipwright.engine.roll.Roll;

class CostOfHitsTest {
    private static final Effort QUICK = Effort.STATIC.withRaces(false);

    /** Every play of every roll is judged, whether or not one hits. */
    private static double plain(Position position, Judge judge) {
        double gained = 0;
        double forced = 0;
        double quiet = 0;
        int forcedThrows = 0;
        int quietThrows = 0;
        for (Roll roll : Roll.all()) {
            List<PlayVerdict> plays =
                    judge.ask(Question.of(position, roll), QUICK).plays();
            double best = plays.get(0).equity();
            OptionalDouble still = plays.stream()
                    .filter(each -> each.play().result().opponentCount(25) == position.opponentCount(25))
                    .mapToDouble(PlayVerdict::equity)
                    .max();
            if (still.isPresent()) {
                gained += roll.ways() * (best - still.getAsDouble());
                quiet += roll.ways() * still.getAsDouble();
                quietThrows += roll.ways();
            } else {
                forced += roll.ways() * best;
                forcedThrows += roll.ways();
            }
        }
        double more = quietThrows == 0 ? 0 : forced - forcedThrows * quiet / quietThrows;
        return (gained + Math.max(0, more)) / 36;
    }

    private static double cost(Position position, Judge judge) {
        return CostOfHits.of(position, judge.replies(position, 0), judge, Progress.NONE);
    }

    @Test
    void isThatOfJudgingEverything() {
        int hits = 0;
        try (Judge judge = new Judge(Knowledge.of(PipEvaluator::new), 1)) {
            for (Position position : RandomBoards.of(23, 60)
                    .map(board -> Position.ofPlanes(board.toPlanes(), 0))
                    .toList()) {
                double cost = cost(position, judge);
                assertEquals(plain(position, judge), cost, 0, position.toString());
                hits += cost > 0 ? 1 : 0;
            }
        }
        assertTrue(hits > 10, hits + " positions with hits");
    }

    /** From the bar against a blot on the only open point, the rolls that come in must hit. */
    @Test
    void rollsThatMustHitAreHeldAgainstTheOthers() {
        Position position = PositionText.parse("1@bar 14@6 / 2@1 2@2 2@3 2@4 2@5 1@6 4@8");
        try (Judge judge = new Judge(Knowledge.of(PipEvaluator::new), 1)) {
            double cost = cost(position, judge);
            assertEquals(plain(position, judge), cost, 0);
            assertTrue(cost > 0);
        }
    }
}
