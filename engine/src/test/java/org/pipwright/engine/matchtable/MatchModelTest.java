package org.pipwright.engine.matchtable;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.cube.CubeEfficiency;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.CubeWalk;
import org.pipwright.engine.cube.CubeWindow;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.score.MatchScore;

/** Cube values at match scores: worked cases and what must hold at any score. */
class MatchModelTest {
    private static final CubeWalk WALK = new CubeWalk(50, 11);
    private static final CubeUse USE = new CubeUse(WALK, CubeEfficiency.constant(1));
    private static final MatchTable TABLE = MatchTableBuilder.build(7, 0.26, 0.01, WALK, WALK);
    private static final GammonShares USUAL = new GammonShares(0.26, 0.01, 0.26, 0.01);

    private static MatchModel at(int mine, int theirs, boolean crawford) {
        return new MatchModel(new MatchStakes(new MatchScore(mine, theirs, crawford)), TABLE, USE);
    }

    /** A table with given chances of the side that needs a points against one that needs b, the rest even, in no order. */
    private static MatchTable table(int length, int[][] known) {
        double[][] chances = new double[length + 1][length + 1];
        double[] post = new double[length + 1];
        Arrays.fill(post, 0.5);
        for (double[] row : chances) {
            Arrays.fill(row, 0.5);
        }
        for (int[] entry : known) {
            chances[entry[0]][entry[1]] = entry[2] / 100.0;
            chances[entry[1]][entry[0]] = 1 - entry[2] / 100.0;
        }
        return MatchTable.unfinished(chances, post);
    }

    /**
     * A worked example of our own: I need 2, the opponent needs 4 and doubles to 2. With chances that are common practice,
     * no source, dropping leaves 2-away against 3-away, 60 %; losing leaves 2-away against 2-away, 50 %; winning wins
     * the match. Take point (60 - 50) / (100 - 50) = 20 % with a dead cube, which it is for me.
     */
    @Test
    void theWorkedTakeAtTwoAwayAgainstFourAway() {
        MatchTable printed = table(4, new int[][] {{2, 3, 60}});
        // Seen from the doubler, who needs 4. Its cube at 2 is dead for the taker, who needs no more than that.
        MatchModel model = new MatchModel(new MatchStakes(new MatchScore(4, 2, false)), printed, USE);
        CubeWindow window = CubeWindow.of(model.curves(GammonShares.NONE, CubeState.START));
        assertEquals(0.20, window.takePoint(), 1e-6);
    }

    /** Both sides at 2-away: the loser of a doubled game loses the match, so 50 % v the pass at 1-away v 2-away. */
    @Test
    void theTakeAtTwoAwayAgainstTwoAway() {
        MatchTable table = table(2, new int[][] {{1, 2, 70}});
        MatchModel model = new MatchModel(new MatchStakes(new MatchScore(2, 2, false)), table, USE);
        CubeWindow window = CubeWindow.of(model.curves(USUAL, CubeState.START));
        assertEquals(0.30, window.takePoint(), 1e-6);
        // The side on roll has nothing to lose by the cube but its own market, nor the other any use of it.
        assertEquals(0.5, model.curves(USUAL, CubeState.START).at(0.5).doubleTake(), 1e-9);
    }

    /** The automatic double is advice that the model finds, from hopeless to even positions. */
    @ParameterizedTest
    @ValueSource(ints = {2, 3, 4, 5, 6, 7})
    void afterTheCrawfordGameTheTrailerDoublesAtOnce(int away) {
        for (int tenths = 1; tenths <= 5; tenths++) {
            double win = tenths / 10.0;
            assertTrue(at(away, 1, false).curves(USUAL, CubeState.START).at(win).shouldDouble());
            assertFalse(
                    at(1, away, false).curves(USUAL, CubeState.START).at(win).shouldDouble());
        }
    }

    /**
     * The leader's free pass: with the trailer an even number away, the point it costs does not change how many doubled
     * games the trailer has to win, so the leader passes when only a little behind. It is used up by that, so with more
     * games to come it is kept for a somewhat worse position.
     */
    @ParameterizedTest
    @CsvSource({"2, 0.49, 0.50", "4, 0.45, 0.50", "6, 0.42, 0.50", "3, 0.15, 0.30", "5, 0.15, 0.30", "7, 0.15, 0.30"})
    void theLeaderPassesFreelyWhenTheTrailerIsAnEvenNumberAway(int away, double least, double most) {
        double take =
                CubeWindow.of(at(away, 1, false).curves(USUAL, CubeState.START)).takePoint();
        assertTrue(take >= least && take <= most + 1e-9, "take point " + take);
    }

    @Test
    void theCubeIsNotThereInTheCrawfordGame() {
        for (double win = 0; win <= 1; win += 0.125) {
            CubeValues values = at(4, 1, true).curves(USUAL, CubeState.START).at(win);
            assertFalse(values.mayDouble());
            MatchPayoffs payoffs = new MatchPayoffs(TABLE, new MatchScore(4, 1, true), USUAL);
            double lost = payoffs.played(false, CubeState.START);
            double won = payoffs.played(true, CubeState.START);
            assertEquals(lost + win * (won - lost), values.noDouble(), 1e-12);
        }
    }

    @Test
    void aDeadCubeIsWorthNothingToItsOwner() {
        // I need 2 and own a cube at 2; the opponent needs 5 and loses any game at once.
        CubeState mine = new CubeState(2, CubeOwner.ME);
        MatchStakes stakes = new MatchStakes(new MatchScore(2, 5, false));
        assertTrue(stakes.dead(mine));
        MatchPayoffs payoffs = new MatchPayoffs(TABLE, stakes.score(), USUAL);
        for (int tenths = 1; tenths < 10; tenths++) {
            double win = tenths / 10.0;
            CubeValues values =
                    new MatchModel(stakes, TABLE, USE).curves(USUAL, mine).at(win);
            assertFalse(values.shouldDouble());
            double lost = payoffs.played(false, mine);
            assertEquals(lost + win * (payoffs.played(true, mine) - lost), values.noDouble(), 1e-9);
        }
    }

    @Test
    void valuesStayBetweenTheEndsAndGrowWithTheChance() {
        SplittableRandom random = new SplittableRandom(8);
        for (int i = 0; i < 60; i++) {
            int a = 1 + random.nextInt(7);
            int b = 1 + random.nextInt(7);
            boolean crawford = (a == 1) != (b == 1) && random.nextBoolean();
            GammonShares shares = new GammonShares(random.nextDouble() / 2, 0.02, random.nextDouble() / 2, 0.02);
            CubeOwner owner = CubeOwner.values()[random.nextInt(3)];
            CubeState cube = owner == CubeOwner.CENTRE ? CubeState.START : new CubeState(2 << random.nextInt(2), owner);
            MatchModel model = at(a, b, crawford);
            double last = 0;
            for (double win = 0; win <= 1; win += 1.0 / 32) {
                CubeValues values = model.curves(shares, cube).at(win);
                assertTrue(values.best() >= last - 1e-9 && values.best() <= 1 + 1e-12, "at " + win);
                last = values.best();
            }
        }
    }
}
