package org.pipwright.engine.roll;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Seeded dice are fair and repeatable. The chi-square limits are so wide that about one fair stream in a million exceeds
 * them, and the seeds are fixed: a failure means that the dice changed for the worse.
 */
@Tag("fast")
class DiceTest {
    /** Exceeded by chi-square with 20 degrees of freedom about once in a million. */
    private static final double LIMIT_20 = 65;

    /** The same with 14 degrees of freedom. */
    private static final double LIMIT_14 = 54;

    /** The same with 440 degrees of freedom. */
    private static final double LIMIT_440 = 600;

    private static final int THROWS = 360_000;

    @ParameterizedTest
    @ValueSource(longs = {0, 1, 20_260_101})
    void oneLongGameIsFair(long seed) {
        Dice dice = Dice.ofGame(seed, 7);
        long[] seen = new long[Roll.COUNT];
        for (int i = 0; i < THROWS; i++) {
            seen[dice.next().index()]++;
        }
        assertTrue(chiSquare(seen, chances()) < LIMIT_20);
    }

    /** First throws of neighbouring games: fair, and unrelated from one game to the next. */
    @Test
    void neighbouringGamesAreFairAndUnrelated() {
        long[] first = new long[Roll.COUNT];
        long[] pairs = new long[Roll.COUNT * Roll.COUNT];
        int before = Dice.ofGame(5, -1).next().index();
        for (int game = 0; game < THROWS; game++) {
            int now = Dice.ofGame(5, game).next().index();
            first[now]++;
            pairs[before * Roll.COUNT + now]++;
            before = now;
        }
        double[] one = chances();
        double[] two = new double[pairs.length];
        Arrays.setAll(two, i -> one[i / Roll.COUNT] * one[i % Roll.COUNT]);
        assertTrue(chiSquare(first, one) < LIMIT_20);
        assertTrue(chiSquare(pairs, two) < LIMIT_440);
    }

    @Test
    void openingIsFairAndNeverDouble() {
        Dice dice = Dice.ofGame(3, 3);
        long[] seen = new long[Roll.COUNT];
        for (int i = 0; i < THROWS; i++) {
            Roll roll = dice.opening();
            assertFalse(roll.isDouble());
            seen[roll.index()]++;
        }
        double[] chances = new double[Roll.COUNT];
        Arrays.setAll(chances, i -> Roll.all().get(i).isDouble() ? 0 : 1 / 15.0);
        assertTrue(chiSquare(seen, chances) < LIMIT_14);
    }

    @Test
    void belowIsFair() {
        Dice dice = Dice.ofGame(9, 9);
        long[] seen = new long[15];
        for (int i = 0; i < THROWS; i++) {
            seen[dice.below(15)]++;
        }
        double[] chances = new double[15];
        Arrays.fill(chances, 1 / 15.0);
        assertTrue(chiSquare(seen, chances) < LIMIT_14);
    }

    @Test
    void sameArgumentsGiveTheSameStream() {
        for (int game = 0; game < 100; game++) {
            assertEquals(stream(1, game), stream(1, game));
        }
    }

    @Test
    void gamesAndSeedsDiffer() {
        Set<List<Roll>> streams = new HashSet<>();
        for (int seed = 0; seed < 100; seed++) {
            for (int game = 0; game < 100; game++) {
                streams.add(stream(seed, game));
            }
        }
        assertEquals(100 * 100, streams.size());
    }

    private static List<Roll> stream(long seed, long game) {
        Dice dice = Dice.ofGame(seed, game);
        List<Roll> rolls = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            rolls.add(dice.next());
        }
        return rolls;
    }

    private static double[] chances() {
        double[] chances = new double[Roll.COUNT];
        Arrays.setAll(chances, i -> Roll.all().get(i).ways() / 36.0);
        return chances;
    }

    /** Pearson's statistic; classes with no chance are left out. */
    private static double chiSquare(long[] seen, double[] chances) {
        long total = Arrays.stream(seen).sum();
        double sum = 0;
        for (int i = 0; i < seen.length; i++) {
            if (chances[i] > 0) {
                double expected = total * chances[i];
                sum += (seen[i] - expected) * (seen[i] - expected) / expected;
            }
        }
        return sum;
    }
}
