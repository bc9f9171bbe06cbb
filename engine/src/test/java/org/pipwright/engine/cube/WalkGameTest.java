package org.pipwright.engine.cube;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Games of a fair walk: the continuous limit of the theory, dead cubes, and play by the rules it finds. */
@Tag("fast")
class WalkGameTest {
    /** Money without gammons; levels of the cube beyond the given one are dead. */
    private static Payoffs money(int lastTurnable) {
        return new Payoffs() {
            @Override
            public double played(boolean won, CubeState cube) {
                return won ? cube.value() : -cube.value();
            }

            @Override
            public double passed(boolean won, int cube) {
                return won ? cube : -cube;
            }

            @Override
            public boolean cubeMatters(int cube) {
                return cube <= lastTurnable;
            }
        };
    }

    private static CubeCurves curves(CubeWalk walk, CubeState cube, int lastTurnable) {
        WalkGame game = new WalkGame(walk, money(lastTurnable));
        return win ->
                new CubeValues(true, false, game.rolling(cube, true, win), game.doubleTake(cube, win), cube.value(), 0);
    }

    /** Last cube of the game: 25 % to take (common theory; exact for any walk, since a dead game is linear). */
    @ParameterizedTest
    @CsvSource({"10, 1", "50, 11", "100, 1"})
    void aDeadCubeIsTakenFromAQuarter(int cells, int steps) {
        CubeWindow window = CubeWindow.of(curves(new CubeWalk(cells, steps), CubeState.START, 1));
        assertEquals(0.25, window.takePoint(), 1e-9);
    }

    /** Keeler and Spencer 1975: as the steps shrink, double at 80 % and take from 20 %. The distance shrinks with them. */
    @Test
    void smallStepsApproachTheContinuousGame() {
        double lastTake = 1;
        double lastDouble = 1;
        for (int cells : new int[] {10, 20, 40, 80, 160}) {
            CubeWindow window = CubeWindow.of(curves(new CubeWalk(cells, 4), CubeState.START, 1 << 12));
            double take = Math.abs(window.takePoint() - 0.2);
            double doubling = Math.abs(window.from() - 0.8);
            assertTrue(take < lastTake && doubling < lastDouble, cells + " cells: " + window);
            lastTake = take;
            lastDouble = doubling;
        }
        assertTrue(lastTake < 0.002, "take point off by " + lastTake);
        assertTrue(lastDouble < 0.02, "doubling point off by " + lastDouble);
    }

    /** Keeler and Spencer's worked example: from 90 % the chance to pass through 50 % before winning is 1/5. */
    @Test
    void theirWorkedExample() {
        assertEquals(1 / 5.0, CubeWalk.reachesFirst(0.9, 0.5, 1), 1e-15);
        assertEquals(4 / 5.0, CubeWalk.reachesFirst(0.9, 1, 0.5), 1e-15);
    }

    /**
     * Their Lemma 1 in its printed form, a/(a + b) to reach x + b before x - a, against simulated walks on 50 cells, of
     * which the first is the worked example.
     */
    @ParameterizedTest
    @CsvSource({"45, 20, 5", "25, 15, 15", "10, 9, 30"})
    void simulatedWalksReachALevelFirstAsOften(int start, int down, int up) {
        double expected = (double) down / (down + up);
        double x = start / 50.0;
        assertEquals(expected, CubeWalk.reachesFirst(x, x + up / 50.0, x - down / 50.0), 1e-12);
        SplittableRandom random = new SplittableRandom(11);
        int games = 50_000;
        int reached = 0;
        for (int i = 0; i < games; i++) {
            int place = start;
            while (place > start - down && place < start + up) {
                place += random.nextBoolean() ? 1 : -1;
            }
            reached += place == start + up ? 1 : 0;
        }
        assertEquals(expected, (double) reached / games, 4 * Math.sqrt(expected * (1 - expected) / games));
    }

    /** Their Theorem 1 from the lemma: doubled at 80 %, taking and passing are equal, as the taker redoubles at 80 %. */
    @Test
    void theDoublingPointFollowsFromTheLemma() {
        double back = CubeWalk.reachesFirst(0.2, 0.8, 0);
        // The taker of a 2 cube cashes 2 with this chance, else loses 2: as bad as passing 1.
        assertEquals(-1, 2 * back - 2 * (1 - back), 1e-12);
    }

    /** By hand: four steps of 1/100 have twice the deviation of one. */
    @Test
    void moreStepsARollSwingMore() {
        assertEquals(0.01, new CubeWalk(100, 1).deviation(), 1e-15);
        assertEquals(0.02, new CubeWalk(100, 4).deviation(), 1e-15);
    }

    /** From the levels themselves one is reached for certain. */
    @Test
    void aLevelIsReachedFromItself() {
        assertEquals(1, CubeWalk.reachesFirst(0.75, 0.75, 0.25));
        assertEquals(0, CubeWalk.reachesFirst(0.25, 0.75, 0.25));
    }

    /** Two steps by hand, the ends absorbing; then between the grid points and beyond the ends. */
    @Test
    void averagesAndValuesBetweenGridPoints() {
        double[] after = {0, 8, 0, 16, 32};
        double[] before = new double[5];
        new CubeWalk(4, 2).average(after, before, new double[5]);
        assertArrayEquals(new double[] {0, 6, 8, 22, 32}, before);
        CubeWalk walk = new CubeWalk(4, 1);
        assertEquals(12, walk.at(new double[] {0, 8, 16, 16, 32}, 0.375));
        assertEquals(28, walk.at(new double[] {0, 8, 16, 16, 32}, 0.9375));
        assertEquals(32, walk.at(new double[] {0, 8, 16, 16, 32}, 1.5));
    }

    @Test
    void aChanceOutsideTheLevelsIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> CubeWalk.reachesFirst(0.4, 0.5, 1));
        assertThrows(IllegalArgumentException.class, () -> CubeWalk.reachesFirst(0.5, 0.5, 0.5));
    }

    /** The solved values are those that simulated games give when both sides play by them. */
    @ParameterizedTest
    @ValueSource(doubles = {0.5, 0.6, 0.7})
    void simulatedGamesEarnTheSolvedValue(double start) {
        CubeWalk walk = new CubeWalk(10, 1);
        WalkGame game = new WalkGame(walk, money(1 << 10));
        SplittableRandom random = new SplittableRandom(5);
        int games = 400_000;
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < games; i++) {
            double points = simulate(game, (int) Math.round(start * 10), random);
            sum += points;
            squares += points * points;
        }
        double mean = sum / games;
        double error = Math.sqrt((squares / games - mean * mean) / games);
        double expected = game.value(CubeState.START, true, start);
        assertEquals(expected, mean, 4 * error + 1e-9);
    }

    /** One game on a grid of ten cells, "me" on roll first; each side is asked the values seen from itself. */
    private static double simulate(WalkGame game, int start, SplittableRandom random) {
        int place = start;
        CubeState cube = CubeState.START;
        for (int sign = 1; ; sign = -sign) {
            double win = place / 10.0;
            if (cube.turnable() && cube.value() <= 1 << 10) {
                double offer = Math.min(cube.value(), game.doubleTake(cube, win));
                if (offer > game.rolling(cube, true, win)) {
                    if (game.doubleTake(cube, win) > cube.value()) {
                        return sign * cube.value();
                    }
                    cube = cube.taken();
                }
            }
            place += random.nextBoolean() ? 1 : -1;
            if (place == 0 || place == 10) {
                return sign * (place == 10 ? 1 : -1) * cube.value();
            }
            place = 10 - place;
            cube = cube.swapped();
        }
    }

    @Test
    void oneSidesValueIsTheOthersLoss() {
        WalkGame game = new WalkGame(new CubeWalk(50, 11), money(1 << 12));
        for (CubeOwner owner : CubeOwner.values()) {
            CubeState cube = new CubeState(2, owner);
            for (double win = 0.02; win < 1; win += 0.07) {
                assertEquals(-game.value(cube.swapped(), false, 1 - win), game.value(cube, true, win), 1e-9);
                assertEquals(-game.rolling(cube.swapped(), false, 1 - win), game.rolling(cube, true, win), 1e-9);
            }
        }
    }
}
