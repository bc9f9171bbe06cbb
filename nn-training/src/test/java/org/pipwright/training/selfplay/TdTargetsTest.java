package org.pipwright.training.selfplay;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.evaluation.Outcomes;

/** Targets against the forward view written out as a sum, in double precision. */
class TdTargetsTest {
    private static final int COUNT = Outcomes.COUNT;

    /** Chance k of the value after turn s, as the side that played turn t sees it: sides alternate, and so do the halves. */
    private static double seen(float[] chances, int s, int t, int k) {
        int as = (s - t) % 2 == 0 ? k : (k + 3) % COUNT;
        return chances[s * COUNT + as];
    }

    /**
     * The forward view: the value n turns on has weight (1 - lambda) lambda^n, and all weight that is left goes to the
     * last turn, whose value is the result.
     */
    private static double forwardView(float[] chances, int turns, double lambda, int t, int k) {
        double sum = 0;
        for (int s = t; s < turns - 1; s++) {
            sum += (1 - lambda) * Math.pow(lambda, s - t) * seen(chances, s, t, k);
        }
        return sum + Math.pow(lambda, turns - 1 - t) * seen(chances, turns - 1, t, k);
    }

    private static float[] randomChances(SplittableRandom random, int length) {
        float[] chances = new float[length];
        for (int i = 0; i < length; i++) {
            chances[i] = (float) random.nextDouble();
        }
        return chances;
    }

    @ParameterizedTest
    @ValueSource(floats = {0, 0.1f, 0.5f, 0.7f, 0.95f, 1})
    void agreesWithTheSum(float lambda) {
        SplittableRandom random = new SplittableRandom(3);
        for (int turns = 1; turns <= 80; turns += 1 + turns / 8) {
            // Longer than the game: what lies behind is another game's.
            float[] before = randomChances(random, (turns + 2) * COUNT);
            float[] after = before.clone();
            TdTargets.apply(after, turns, lambda);
            for (int t = 0; t < turns; t++) {
                for (int k = 0; k < COUNT; k++) {
                    assertEquals(forwardView(before, turns, lambda, t, k), after[t * COUNT + k], 1e-6);
                }
            }
            for (int i = turns * COUNT; i < before.length; i++) {
                assertEquals(before[i], after[i]);
            }
        }
    }

    @Test
    void aGameThatNobodyFinishedChangesNothing() {
        float[] chances = {0.1f, 0.2f, 0.3f, 0.4f, 0, 0};
        TdTargets.apply(chances, 0, 0.7f);
        assertEquals(0.1f, chances[0]);
        assertEquals(0.4f, chances[3]);
    }

    /** Three turns by hand: the loser's turns see the winner's gammon as a gammon lost. */
    @Test
    void allLambdaSeesOnlyTheResult() {
        float[] chances = new float[3 * COUNT];
        chances[0] = 1;
        chances[COUNT] = 1;
        chances[2 * COUNT + 1] = 1;
        TdTargets.apply(chances, 3, 1);
        for (int k = 0; k < COUNT; k++) {
            assertEquals(k == 1 ? 1 : 0, chances[k]);
            assertEquals(k == 4 ? 1 : 0, chances[COUNT + k]);
            assertEquals(k == 1 ? 1 : 0, chances[2 * COUNT + k]);
        }
    }
}
