package org.pipwright.engine.matchtable;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.score.MatchScore;

/**
 * The last rolls of matches with five and six checkers a side, where the solver's short cuts save most, against recursion
 * without any of them. That recursion is checked with fewer checkers against a separate program, through the solver.
 */
class SixCheckerEndingsTest {
    private static final MatchTable TABLE = ShippedMatchTable.load();

    /** The solver keeps values to 2.3e-10 and rounds once a roll. */
    private static final double CLOSE = 1e-8;

    private static final int POSITIONS = 18;

    private static final Outcomes UNKNOWN = new Outcomes(0.5, 0, 0, 0.5, 0, 0);

    /** Mostly on low points, so that fewer pairs can follow. */
    private static List<Integer> side(SplittableRandom random) {
        List<Integer> side = new ArrayList<>();
        for (int n = 5 + random.nextInt(2); n > 0; n--) {
            side.add(1 + Math.min(random.nextInt(6), random.nextInt(6)));
        }
        Collections.sort(side);
        return side;
    }

    private static CubeState cube(int value, char owner) {
        CubeOwner by = owner == 'c' ? CubeOwner.CENTRE : owner == 'm' ? CubeOwner.ME : CubeOwner.THEM;
        return new CubeState(value, by);
    }

    /** Values to 1e-8, and no action that would lose anything, with the cube in the centre and owned by either side. */
    @ParameterizedTest
    @CsvSource({"3, 3, false", "2, 4, false", "5, 4, false", "1, 3, false", "1, 2, true", "9, 7, false"})
    void equalToPlainRecursion(int mine, int theirs, boolean crawford) {
        MatchScore score = new MatchScore(mine, theirs, crawford);
        MatchTerms terms = new MatchTerms(new MatchStakes(score), TABLE);
        SolvedEndings plain = new SolvedEndings(TABLE, score);
        SplittableRandom random = new SplittableRandom(10 * mine + theirs);
        int doubles = 0;
        for (int i = 0; i < POSITIONS; i++) {
            List<Integer> me = side(random);
            List<Integer> other = side(random);
            char owner = crawford ? 'c' : "cmt".charAt(i % 3);
            int value = owner == 'c' ? 1 : 2;
            String name = me + " / " + other + " " + value + owner + " at " + score;
            Position position = MatchEndingsTest.position(me, other);
            CubeValues values = terms.exact(position, cube(value, owner)).orElseThrow(() -> new AssertionError(name));
            double roll = plain.rolling(me, other, value, owner);
            assertEquals(roll, values.noDouble(), CLOSE, name);
            if (values.mayDouble()) {
                doubles += values.shouldDouble() ? 1 : 0;
                double take = plain.rolling(me, other, 2 * value, 't');
                assertEquals(take, values.doubleTake(), CLOSE, name);
                double pass = TABLE.chanceAfter(score, value);
                CubeValues truth = new CubeValues(true, false, roll, take, pass, take);
                CubeValues said = terms.values(position, UNKNOWN, cube(value, owner));
                assertFalse(MatchEndingsTest.costs(truth, said), name);
            }
        }
        assertTrue(crawford || mine == 1 || doubles > 3, doubles + " doubles at " + score);
    }
}
