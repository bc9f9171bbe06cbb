package org.pipwright.engine.duel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.regime.RandomBoards;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.RollLuck;

/** Luck of rolls over random positions. */
class RollLuckTest {
    private final PositionEvaluator evaluator = new NetworkEvaluator(RandomNet.of(11));
    private final RollLuck luck = new RollLuck(evaluator);

    private interface Check {
        void on(Position position);
    }

    private static void everywhere(long seed, int boards, Check check) {
        AtomicInteger checked = new AtomicInteger();
        RandomBoards.of(seed, boards).forEach(board -> {
            Position position = Position.ofPlanes(board.toPlanes(), 0);
            if (!position.finished()) {
                check.on(position);
                checked.incrementAndGet();
            }
        });
        assertTrue(checked.get() > boards / 2, "unfinished positions: " + checked);
    }

    /** The mean over all rolls is 0, and not because each luck is. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void meanIsZero(boolean opening) {
        double[] largest = new double[1];
        everywhere(31, 300, position -> {
            double mean = 0;
            for (Roll roll : opening ? Roll.opening() : Roll.all()) {
                double of = luck.points(position.toPlanes(), 0, roll, opening);
                mean += (opening ? 1 / 15.0 : roll.probability()) * of;
                largest[0] = Math.max(largest[0], Math.abs(of));
            }
            assertEquals(0, mean, 1e-12, position::toString);
        });
        assertTrue(largest[0] > 0.1, "some roll is lucky: " + largest[0]);
    }

    /** Agrees with the definition taken literally: positions as objects, one evaluation each. */
    @Test
    void followsTheDefinition() {
        everywhere(32, 60, position -> {
            double mean = 0;
            for (Roll roll : Roll.all()) {
                mean += roll.probability() * best(position, roll);
            }
            for (Roll roll : new Roll[] {Roll.of(6, 5), Roll.of(1, 1), Roll.of(3, 1)}) {
                double expected = best(position, roll) - mean;
                assertEquals(expected, luck.points(position.toPlanes(), 0, roll, false), 1e-4, position::toString);
            }
        });
    }

    private double best(Position position, Roll roll) {
        double best = Double.NEGATIVE_INFINITY;
        for (Play play : Plays.legal(position, roll)) {
            best = Math.max(best, -evaluator.evaluate(play.result().swapped()).equity());
        }
        return best;
    }

    @Test
    void noDoubleOpensAGame() {
        int[] planes = Position.start().toPlanes();
        assertThrows(IllegalArgumentException.class, () -> luck.points(planes, 0, Roll.of(2, 2), true));
    }
}
