package org.pipwright.engine.cube;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.OneSidedTable;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.bearoff.TableProgress;
import org.pipwright.engine.bearoff.TwoSidedTable;
import org.pipwright.engine.matchtable.MatchTable;
import org.pipwright.engine.matchtable.MatchTerms;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.score.MatchScore;

/** Windows of the last rolls against exact values, which come from elsewhere: from tables and from backward induction. */
class CubeWindowsTest {
    private static final TwoSidedTable TABLE = TwoSidedTable.build(new SideIndex(6, 4), 2, TableProgress.NONE);
    private static final CubeTerms MONEY = new MoneyTerms(
            MoneyStakes.USUAL,
            new ExactCube(EndgameTables.of(OneSidedTable.build(new SideIndex(6, 4), 1, TableProgress.NONE), TABLE)));
    private static final MatchTable MATCHES = ShippedMatchTable.load();

    private static CubeTerms match(int mine, int theirs) {
        return new MatchTerms(new MatchStakes(new MatchScore(mine, theirs, false)), MATCHES);
    }

    private static Position random(SplittableRandom random) {
        int[] planes = new int[Planes.STRIDE];
        TABLE.index().write(1 + random.nextInt(TABLE.index().size() - 1), planes, 0);
        TABLE.index().write(1 + random.nextInt(TABLE.index().size() - 1), planes, Planes.SIDE);
        int[][] sides = new int[2][Planes.PLACES];
        for (int side = 0; side < 2; side++) {
            sides[side][0] = Position.FULL;
            for (int point = 1; point <= 6; point++) {
                sides[side][point] = Planes.count(planes, side * Planes.SIDE, point);
                sides[side][0] -= sides[side][point];
            }
        }
        return Position.of(sides[0], sides[1]);
    }

    private static double win(Position position) {
        int[] planes = position.toPlanes();
        return TABLE.value(TABLE.index().of(planes, 0), TABLE.index().of(planes, Planes.SIDE))
                .win();
    }

    /** At the position's own chance the curves give its exact values, so that a window can't contradict them. */
    @Test
    void theCurvesGoThroughTheExactValues() {
        SplittableRandom random = new SplittableRandom(4);
        List<CubeTerms> all = List.of(MONEY, match(3, 3), match(5, 2), match(2, 7));
        List<CubeState> cubes = List.of(CubeState.START, new CubeState(2, CubeOwner.ME));
        int[] seen = new int[2];
        for (int i = 0; i < 3000; i++) {
            Position position = random(random);
            CubeTerms terms = all.get(random.nextInt(all.size()));
            CubeState cube = cubes.get(random.nextInt(cubes.size()));
            Optional<CubeCurves> curves = CubeWindows.lastRolls(terms, position, cube);
            if (curves.isEmpty()) {
                continue;
            }
            seen[LastRolls.of(position).opponentOff() == 1 ? 0 : 1]++;
            CubeValues exact = terms.exact(position, cube).orElseThrow();
            CubeValues found = curves.orElseThrow().at(win(position));
            String name = position + " " + cube + " " + terms.stakes();
            assertEquals(exact.noDouble(), found.noDouble(), 1e-6, name);
            assertEquals(exact.doubleTake(), found.doubleTake(), 1e-6, name);
            assertEquals(exact.doublePass(), found.doublePass(), 1e-9, name);
        }
        assertTrue(seen[0] > 50 && seen[1] > 50, seen[0] + " with one roll, " + seen[1] + " with two");
    }

    private static Optional<CubeWindow> window(CubeTerms terms, String position, CubeState cube) {
        return CubeWindows.of(terms, PositionText.parse(position), GammonShares.NONE, cube);
    }

    /**
     * Checkers on points 3 and 2 go off with 25 of 36 throws: the opponent redoubles if it gets to roll, and is taken, so
     * that it needs less than 25 % to take the first double. By hand.
     */
    @Test
    void theLastTwoRollsByHand() {
        CubeWindow often = window(MONEY, "3@1 / 1@3 1@2", CubeState.START).orElseThrow();
        double off = 25 / 36.0;
        double redoubled = 2 * (2 * off - 1);
        // With a as the chance of the first roll: a - (1 - a) * redoubled = 1/2 where a double can just be taken.
        assertEquals(off * 0.5 / (1 + redoubled), often.takePoint(), 1e-6);
        assertEquals(1 - off / (1 + redoubled), often.from(), 1e-6);
        // Whom a redouble never helps takes and is doubled as on a last roll: here it wins with doubles only.
        CubeWindow seldom = window(MONEY, "4@1 / 4@1", CubeState.START).orElseThrow();
        assertEquals(0.25, seldom.takePoint(), 1e-6);
        assertEquals(0.5, seldom.from(), 1e-6);
    }

    @Test
    void moreRollsHaveNoWindowOfTheirOwn() {
        assertFalse(window(MONEY, "3@6 / 3@6", CubeState.START).isPresent());
        assertFalse(window(match(3, 3), "3@6 / 3@6", CubeState.START).isPresent());
        // Nobody has any other chance.
        assertFalse(window(MONEY, "2@6 / 3@6", CubeState.START).isPresent());
    }
}
