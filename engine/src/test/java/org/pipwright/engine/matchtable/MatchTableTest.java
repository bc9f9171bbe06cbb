package org.pipwright.engine.matchtable;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.pipwright.engine.cube.CubeWalk;
import org.pipwright.engine.score.MatchScore;

/** What holds of any computed table, and hand calculations of its edges. */
class MatchTableTest {
    private static final double G = 0.25;
    private static final double B = 0.02;
    private static final MatchTable TABLE = MatchTableBuilder.build(9, G, B, new CubeWalk(20, 2), new CubeWalk(20, 1));

    private static double crawford(int n) {
        return TABLE.chance(new MatchScore(n, 1, n > 1));
    }

    private static double post(int n) {
        return n <= 0 ? 1 : TABLE.chance(new MatchScore(n, 1, false));
    }

    @Test
    void symmetricAndMonotone() {
        for (int a = 1; a <= 9; a++) {
            for (int b = 1; b <= 9; b++) {
                boolean c = (a == 1) != (b == 1);
                double chance = TABLE.chance(new MatchScore(a, b, c));
                assertEquals(1, chance + TABLE.chance(new MatchScore(b, a, c)), 1e-12);
                if (a < 9) {
                    double farther = TABLE.chance(new MatchScore(a + 1, b, (a + 1 == 1) != (b == 1)));
                    assertTrue(chance > farther, a + "-away " + b + "-away");
                }
            }
            assertEquals(0.5, TABLE.chance(new MatchScore(a, a, false)), 1e-12);
        }
        for (int n = 1; n < 9; n++) {
            assertTrue(post(n) >= post(n + 1));
        }
    }

    /** The Crawford game has no cube: half the games are won, and then the gammon shares say by how much. */
    @Test
    void theCrawfordGameByHand() {
        for (int n = 2; n <= 9; n++) {
            double expected = 0.5 * ((1 - G - B) * post(n - 1) + G * post(n - 2) + B * post(n - 3));
            assertEquals(expected, crawford(n), 1e-12);
        }
    }

    /**
     * After the Crawford game an odd distance leaves the leader no free pass: the trailer's double at once is taken, and
     * half the games are lost. At an even distance the pass is worth something, but not much.
     */
    @Test
    void theGamesAfterItByHand() {
        for (int n = 3; n <= 9; n += 2) {
            double expected = 0.5 * ((1 - G - B) * post(n - 2) + G * post(n - 4) + B * post(n - 6));
            assertEquals(expected, post(n), 1e-9);
        }
        for (int n = 2; n <= 9; n += 2) {
            double withoutPass = 0.5 * ((1 - G - B) * post(n - 2) + G * post(n - 4) + B * post(n - 6));
            assertTrue(post(n) < withoutPass && post(n) > withoutPass - 0.05, n + ": " + post(n));
        }
    }

    @Test
    void pointsAfterAGameLeadToTheNextScoreOrTheEnd() {
        MatchScore score = new MatchScore(3, 2, false);
        assertEquals(1, TABLE.chanceAfter(score, 3));
        assertEquals(0, TABLE.chanceAfter(score, -2));
        assertEquals(TABLE.chance(new MatchScore(3, 1, true)), TABLE.chanceAfter(score, -1));
        assertEquals(post(3), TABLE.chanceAfter(new MatchScore(4, 1, true), 1));
    }

    @Test
    void scoresBeyondTheTableAreRefused() {
        MatchScore score = new MatchScore(10, 3, false);
        String message = assertThrows(IllegalArgumentException.class, () -> TABLE.chance(score))
                .getMessage();
        assertEquals(
                "the match table ends at 9-away, but the score is 10-away against 3-away: "
                        + "play a shorter match or give a longer table",
                message);
    }

    @Test
    void tablesThatContradictThemselvesAreRefused() {
        double[] post = {0, 0.5, 0.49};
        double[][] good = {{0, 0, 0}, {0, 0.5, 0.7}, {0, 0.3, 0.5}};
        assertEquals(0.7, new MatchTable(good, post).chance(new MatchScore(1, 2, true)), 1e-12);
        double[][] sum = {{0, 0, 0}, {0, 0.5, 0.7}, {0, 0.4, 0.5}};
        assertThrows(IllegalArgumentException.class, () -> new MatchTable(sum, post));
        double[][] order = {{0, 0, 0}, {0, 0.5, 0.4}, {0, 0.6, 0.5}};
        assertEquals(
                "the chance at 2-away against 1-away is better than at 1-away: needing more points cannot be better",
                assertThrows(IllegalArgumentException.class, () -> new MatchTable(order, post))
                        .getMessage());
        double[][] longer = {{0, 0, 0, 0}, {0, 0.5, 0.7, 0.7}, {0, 0.3, 0.5, 0.5}, {0, 0.3, 0.5, 0.5}};
        double[] worse = {0, 0.5, 0.4, 0.45};
        assertThrows(IllegalArgumentException.class, () -> new MatchTable(longer, worse));
        assertEquals(3, new MatchTable(longer, new double[] {0, 0.5, 0.4, 0.4}).length());
        double[][] percent = {{0, 0, 0}, {0, 50, 70}, {0, 30, 50}};
        assertThrows(IllegalArgumentException.class, () -> new MatchTable(percent, post));
        assertThrows(IllegalArgumentException.class, () -> new MatchTable(good, new double[] {0, 0.5}));
        assertThrows(IllegalArgumentException.class, () -> new MatchTable(good, new double[] {0, 0.6, 0.49}));
    }
}
