package org.pipwright.engine.cube;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiPredicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;

/** The share of market losers against a plain count. */
@Tag("fast")
class MarketLosersTest {
    private static final PositionEvaluator EVALUATOR = new RaceEvaluator();
    private static final List<Position> POSITIONS = Stream.of(
                    "1@24 1@23 1@6 / 1@24 1@23 1@5 of 3",
                    "2@3 1@2 / 2@4 1@1 of 4",
                    "1@bar 1@6 / 2@5 of 2",
                    "1@6 1@2 / 1@3 1@1 of 3")
            .map(PositionText::parse)
            .toList();

    /** Market losers by their definition: every pair of rolls, both sides playing for the most. */
    @Test
    void marketLosersEqualAPlainCount() {
        MoneyTerms terms = new MoneyTerms(MoneyStakes.USUAL, null);
        BiPredicate<Position, Outcomes> passes =
                (p, o) -> terms.values(p, o, CubeState.START).answer() == CubeAction.PASS;
        double sum = 0;
        for (Position position : POSITIONS) {
            double expected = 0;
            double mean = 0;
            double square = 0;
            Map<Roll, Integer> replies = new HashMap<>();
            for (Roll mine : Roll.all()) {
                Position after = bestPlay(position, mine);
                for (Roll theirs : Roll.all()) {
                    boolean lost = after.finished();
                    if (!lost) {
                        Position back = bestPlay(after, theirs);
                        lost = !back.finished() && passes.test(back, EVALUATOR.evaluate(back));
                    }
                    double chance = mine.probability() * theirs.probability();
                    expected += lost ? chance : 0;
                    replies.merge(mine, lost ? theirs.ways() : 0, Integer::sum);
                    double equity = equity(after, theirs);
                    mean += chance * equity;
                    square += chance * equity * equity;
                }
            }
            Market market = new MarketLosers(EVALUATOR).of(position, passes);
            assertEquals(expected, market.losers(), 1e-9, position.toString());
            assertEquals(Math.sqrt(square - mean * mean), market.volatility(), 1e-5, position.toString());
            market.rolls()
                    .forEach(each ->
                            assertEquals(replies.get(each.roll()), each.replies(), position + " " + each.roll()));
            assertEquals(21, market.rolls().size());
            List<Integer> all =
                    market.rolls().stream().map(Market.Loser::replies).toList();
            assertEquals(all.stream().sorted(Comparator.reverseOrder()).toList(), all);
            sum += expected;
        }
        assertTrue(sum > 0.1 && sum < POSITIONS.size() - 0.1, "losers " + sum);
    }

    /** Both limits belong to what is asked for. */
    @Test
    void rollsThatLoseTheMarketWithSoManyReplies() {
        List<Market.Loser> all = List.of(
                new Market.Loser(Roll.of(6, 6), 36),
                new Market.Loser(Roll.of(5, 5), 20),
                new Market.Loser(Roll.of(4, 4), 10),
                new Market.Loser(Roll.of(3, 1), 0));
        Market market = new Market(0.1, 0.3, all);
        assertEquals(all.subList(1, 3), market.losing(10, 20));
        assertEquals(all.subList(0, 1), market.losing(21, 36));
        assertEquals(List.of(), market.losing(11, 19));
    }

    /** For the side that rolled first, after the other's reply, if it came to one. */
    private static double equity(Position after, Roll reply) {
        if (after.finished()) {
            return -EVALUATOR.evaluate(after).equity();
        }
        return EVALUATOR.evaluate(bestPlay(after, reply)).equity();
    }

    private static Position bestPlay(Position position, Roll roll) {
        Position best = null;
        double most = Double.NEGATIVE_INFINITY;
        for (Play play : Plays.legal(position, roll)) {
            double equity =
                    EVALUATOR.evaluate(play.result().swapped()).swapped().equity();
            // Floats, as the counter compares them: the first of equals.
            if (best == null || (float) equity > (float) most) {
                most = equity;
                best = play.result().swapped();
            }
        }
        return best;
    }
}
