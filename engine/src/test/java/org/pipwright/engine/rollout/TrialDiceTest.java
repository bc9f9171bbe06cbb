package org.pipwright.engine.rollout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;

class TrialDiceTest {
    private static List<Roll> first(long seed, long trial, int count) {
        TrialDice dice = new TrialDice(seed, trial);
        List<Roll> rolls = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            rolls.add(dice.get());
        }
        return rolls;
    }

    @ParameterizedTest
    @ValueSource(longs = {0, 1296, 129_600})
    void eachRoundHasEveryThrowFirstAndSecondAndEachBlockEveryPair(long from) {
        int[][] pairs = new int[21][21];
        for (int round = 0; round < 36; round++) {
            int[] firsts = new int[21];
            int[] seconds = new int[21];
            for (int i = 0; i < 36; i++) {
                List<Roll> rolls = first(8, from + round * 36 + i, 2);
                firsts[rolls.get(0).index()]++;
                seconds[rolls.get(1).index()]++;
                pairs[rolls.get(0).index()][rolls.get(1).index()]++;
            }
            for (Roll roll : Roll.all()) {
                assertEquals(roll.ways(), firsts[roll.index()]);
                assertEquals(roll.ways(), seconds[roll.index()]);
            }
        }
        for (Roll a : Roll.all()) {
            for (Roll b : Roll.all()) {
                assertEquals(a.ways() * b.ways(), pairs[a.index()][b.index()]);
            }
        }
    }

    /**
     * Over seeds, any single trial has all 441 pairs of rolls with their probabilities: chi-squared with 440 degrees of
     * freedom has mean 440 and standard deviation sqrt(880), about 30.
     */
    @ParameterizedTest
    @ValueSource(longs = {0, 5, 77, 1295})
    void aSingleTrialHasFairDice(long trial) {
        int seeds = 200_000;
        int[][] seen = new int[21][21];
        for (int seed = 0; seed < seeds; seed++) {
            List<Roll> rolls = first(seed, trial, 2);
            seen[rolls.get(0).index()][rolls.get(1).index()]++;
        }
        double chiSquared = 0;
        for (Roll a : Roll.all()) {
            for (Roll b : Roll.all()) {
                double expected = seeds * a.probability() * b.probability();
                chiSquared += Math.pow(seen[a.index()][b.index()] - expected, 2) / expected;
            }
        }
        assertTrue(Math.abs(chiSquared - 440) < 4 * 30, "chi-squared " + chiSquared);
    }

    @Test
    void laterThrowsAreThoseOfAGameAndRepeatable() {
        Dice game = Dice.ofGame(3, 41);
        List<Roll> rolls = first(3, 41, 30);
        for (int i = 2; i < 30; i++) {
            assertEquals(game.next(), rolls.get(i));
        }
        assertEquals(rolls, first(3, 41, 30));
        assertNotEquals(rolls, first(4, 41, 30));
        assertNotEquals(rolls, first(3, 42, 30));
    }
}
