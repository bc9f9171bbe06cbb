package org.pipwright.engine.rollout;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.RandomWalk;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.RandomModels;
import org.pipwright.engine.search.RollLuck;

class EarlyLuckTest {
    private final PositionEvaluator net = new NetworkEvaluator(RandomModels.of(5, 16));

    /** More positions than it holds, so that some are forgotten; each twice in a row, so that some are not. */
    @Test
    void remembersWhatWouldBeMeasured() {
        int[] asked = {0};
        PositionEvaluator counting = counting(asked);
        EarlyLuck early = new EarlyLuck(new RollLuck(counting));
        RollLuck luck = new RollLuck(net);
        List<Position> positions = new RandomWalk(3, 8)
                .next(2 * EarlyLuck.MAX_POSITIONS).stream()
                        .distinct()
                        .limit(EarlyLuck.MAX_POSITIONS + 100)
                        .toList();
        assertTrue(positions.size() > EarlyLuck.MAX_POSITIONS);
        Dice dice = Dice.ofGame(1, 1);
        for (int i = 0; i < positions.size(); i++) {
            int[] planes = positions.get(i).toPlanes();
            int before = 0;
            for (int again = 0; again < 2; again++) {
                Roll roll = dice.next();
                double[] expected = new double[Outcomes.COUNT];
                double[] remembered = new double[Outcomes.COUNT];
                early.measure(planes, roll, remembered);
                assertTrue(again == 0 || asked[0] == before, "asked again");
                before = asked[0];
                if (i % 50 == 0) {
                    luck.measure(planes, 0, roll, expected);
                    assertArrayEquals(expected, remembered);
                }
            }
        }
        int before = asked[0];
        double[] again = new double[Outcomes.COUNT];
        early.measure(positions.get(0).toPlanes(), Roll.parse("3-1"), again);
        assertTrue(asked[0] > before, "the first position was forgotten when there was no room");
        double[] expected = new double[Outcomes.COUNT];
        luck.measure(positions.get(0).toPlanes(), 0, Roll.parse("3-1"), expected);
        assertArrayEquals(expected, again);
    }

    private PositionEvaluator counting(int[] asked) {
        return new PositionEvaluator() {
            @Override
            public void evaluate(int[] planes, int at, float[] out, int outAt) {
                asked[0]++;
                net.evaluate(planes, at, out, outAt);
            }

            @Override
            public void evaluateResults(int[] parent, int parentAt, int[] results, int count, float[] out) {
                asked[0]++;
                net.evaluateResults(parent, parentAt, results, count, out);
            }
        };
    }
}
