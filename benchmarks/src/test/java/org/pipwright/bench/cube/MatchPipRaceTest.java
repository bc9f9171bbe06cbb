package org.pipwright.bench.cube;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.matchtable.MatchPayoffs;
import org.pipwright.engine.matchtable.MatchTable;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.score.MatchScore;

/** Pip races in a match against a plain recursion over all throws, always seen from the side on roll. */
class MatchPipRaceTest {
    private static final MatchTable TABLE = ShippedMatchTable.load();

    private static double decide(MatchScore score, int roller, int other, CubeState cube) {
        double roll = rolling(score, roller, other, cube);
        boolean mayDouble = cube.owner() != CubeOwner.THEM && cube.value() < 64;
        if (!mayDouble) {
            return roll;
        }
        double taken = rolling(score, roller, other, new CubeState(2 * cube.value(), CubeOwner.THEM));
        return Math.max(roll, Math.min(taken, TABLE.chanceAfter(score, cube.value())));
    }

    private static double rolling(MatchScore score, int roller, int other, CubeState cube) {
        double sum = 0;
        for (int a = 1; a <= 6; a++) {
            for (int b = 1; b <= 6; b++) {
                int left = roller - (a == b ? 4 * a : a + b);
                sum += left <= 0
                        ? TABLE.chanceAfter(score, cube.value())
                        : 1 - decide(score.swapped(), other, left, cube.swapped());
            }
        }
        return sum / 36;
    }

    @ParameterizedTest
    @CsvSource({"3, 3", "4, 2", "2, 5"})
    void valuesAreThoseOfAPlainRecursion(int mine, int theirs) {
        MatchScore score = new MatchScore(mine, theirs, false);
        MatchPipRace race = new MatchPipRace(12, new MatchPayoffs(TABLE, score, GammonShares.NONE));
        for (int[] pips : new int[][] {{5, 4}, {7, 8}, {9, 6}, {10, 9}}) {
            for (CubeState cube : MatchKnown.CUBES) {
                double plain = rolling(score, pips[0], pips[1], cube);
                assertEquals(
                        plain, race.rolling(pips[0], pips[1], cube), 1e-9, pips[0] + " to " + pips[1] + ", " + cube);
            }
        }
    }
}
