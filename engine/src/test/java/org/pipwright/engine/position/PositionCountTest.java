package org.pipwright.engine.position;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * How many positions there are, checkers of a side being alike and no point being shared. The expected numbers were
 * computed for this project by a separate program; here a closed formula gives them for 15 checkers, and enumerating all
 * positions of 1, 2 and 3 checkers on bit planes gives what the formula says.
 *
 * <p>The formula: a side with j of its n checkers on exactly k of the 24 points does so in C(24, k) C(j - 1, k - 1) ways;
 * the other side then has 24 - k points and its extra places (bar, off) for its n checkers.
 */
@Tag("fast")
class PositionCountTest {
    @Test
    void fifteenCheckersGiveTheKnownCounts() {
        BigInteger all = new BigInteger("18528584051601162496");
        assertEquals(all, formula(15, 2));
        assertEquals(new BigInteger("5293421340612542971"), formula(15, 1));
        assertEquals(new BigInteger("1411634290044494552"), formula(15, 0));
        assertEquals(new BigInteger("18528583971150472385"), all.subtract(finished(15)));
        assertEquals(BigInteger.valueOf(40_225_345_056L), oneSide(15));
    }

    @ParameterizedTest
    @CsvSource({
        "1, 652, 601, 26",
        "2, 107253, 106552, 351",
        "3, 7959904, 7953353, 3276",
        "4, 339183655, 339136154, 23751",
        "5, 9489182436, 9488897425, 142506"
    })
    void formulaGivesTheKnownCountsOfSmallGames(int checkers, long all, long unfinished, long oneSide) {
        assertEquals(BigInteger.valueOf(all), formula(checkers, 2));
        assertEquals(BigInteger.valueOf(unfinished), formula(checkers, 2).subtract(finished(checkers)));
        assertEquals(BigInteger.valueOf(oneSide), oneSide(checkers));
    }

    /** Pairs of sides that share no point, counted on bit planes under each convention, against the formula. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void enumerationGivesWhatTheFormulaSays(int checkers) {
        List<int[]> sides = sides(checkers);
        assertEquals(oneSide(checkers), BigInteger.valueOf(sides.size()));
        long all = 0;
        long unfinished = 0;
        long noneOff = 0;
        long onPoints = 0;
        for (int[] mine : sides) {
            int mineAt = Planes.occupied(mine, 0);
            for (int[] theirs : sides) {
                int theirsAt = Planes.occupied(theirs, 0);
                if ((mineAt & Planes.mirror(theirsAt) & Planes.POINTS) != 0) {
                    continue;
                }
                all++;
                unfinished += mineAt != 1 && theirsAt != 1 ? 1 : 0;
                noneOff += ((mineAt | theirsAt) & 1) == 0 ? 1 : 0;
                onPoints += ((mineAt | theirsAt) & ~Planes.POINTS) == 0 ? 1 : 0;
            }
        }
        assertEquals(formula(checkers, 2), BigInteger.valueOf(all));
        assertEquals(formula(checkers, 2).subtract(finished(checkers)), BigInteger.valueOf(unfinished));
        assertEquals(formula(checkers, 1), BigInteger.valueOf(noneOff));
        assertEquals(formula(checkers, 0), BigInteger.valueOf(onPoints));
    }

    /** Position accepts exactly these positions, but for the one in which both sides are off. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void positionAcceptsAllOfThemAndNoOther(int checkers) {
        List<int[]> sides = sides(checkers);
        long accepted = 0;
        long finished = 0;
        int[] planes = new int[Planes.STRIDE];
        for (int[] mine : sides) {
            for (int[] theirs : sides) {
                System.arraycopy(mine, 0, planes, 0, Planes.SIDE);
                System.arraycopy(theirs, 0, planes, Planes.SIDE, Planes.SIDE);
                boolean shared =
                        (Planes.occupied(mine, 0) & Planes.mirror(Planes.occupied(theirs, 0)) & Planes.POINTS) != 0;
                boolean bothOff = Planes.occupied(mine, 0) == 1 && Planes.occupied(theirs, 0) == 1;
                if (shared || bothOff) {
                    assertThrows(InvalidPositionException.class, () -> Position.ofPlanes(planes, 0));
                } else {
                    finished += Position.ofPlanes(planes, 0).finished() ? 1 : 0;
                    accepted++;
                }
            }
        }
        assertEquals(formula(checkers, 2).subtract(BigInteger.ONE), BigInteger.valueOf(accepted));
        assertEquals(finished(checkers).subtract(BigInteger.ONE), BigInteger.valueOf(finished));
    }

    @Test
    void homeBoardsOfUpToFifteenCheckers() {
        assertEquals(BigInteger.valueOf(54_264), choose(21, 6));
        assertEquals(54_264, sidesUpTo(15, 6).size());
        assertEquals(924, sidesUpTo(6, 6).size());
    }

    /** All ways to put a number of checkers on 26 places, as planes. */
    private static List<int[]> sides(int checkers) {
        List<int[]> sides = new ArrayList<>();
        place(new int[Planes.SIDE], Planes.BAR, checkers, sides);
        return sides;
    }

    /** All ways to have some of a number of checkers on the lowest points and the rest off, as planes. */
    private static List<int[]> sidesUpTo(int checkers, int highest) {
        List<int[]> sides = new ArrayList<>();
        place(new int[Planes.SIDE], highest, checkers, sides);
        return sides;
    }

    private static void place(int[] planes, int highest, int left, List<int[]> sides) {
        if (highest == Planes.OFF) {
            int[] side = planes.clone();
            for (int i = 0; i < left; i++) {
                Planes.add(side, 0, Planes.OFF);
            }
            sides.add(side);
            return;
        }
        int[] side = planes.clone();
        for (int here = 0; here <= left; here++) {
            place(side, highest - 1, left - here, sides);
            if (here < left) {
                Planes.add(side, 0, highest);
            }
        }
    }

    /** Positions of n checkers a side with 24 points and 0 (points only), 1 (and bar) or 2 (and off) extra places. */
    private static BigInteger formula(int n, int extra) {
        BigInteger sum = BigInteger.ZERO;
        for (int k = 0; k <= n; k++) {
            BigInteger mine = BigInteger.ZERO;
            for (int j = k; j <= n; j++) {
                BigInteger onPoints = j == 0 ? BigInteger.ONE : k == 0 ? BigInteger.ZERO : choose(j - 1, k - 1);
                mine = mine.add(choose(24, k).multiply(onPoints).multiply(spread(n - j, extra)));
            }
            sum = sum.add(mine.multiply(spread(n, 24 - k + extra)));
        }
        return sum;
    }

    /** Positions in which at least one side is off altogether. */
    private static BigInteger finished(int n) {
        return oneSide(n).shiftLeft(1).subtract(BigInteger.ONE);
    }

    private static BigInteger oneSide(int n) {
        return spread(n, Planes.PLACES);
    }

    /** Ways to spread like checkers over places. */
    private static BigInteger spread(int checkers, int places) {
        if (places == 0) {
            return checkers == 0 ? BigInteger.ONE : BigInteger.ZERO;
        }
        return choose(checkers + places - 1, checkers);
    }

    private static BigInteger choose(int n, int k) {
        BigInteger ways = BigInteger.ONE;
        for (int i = 1; i <= k; i++) {
            ways = ways.multiply(BigInteger.valueOf(n - k + i)).divide(BigInteger.valueOf(i));
        }
        return ways;
    }
}
