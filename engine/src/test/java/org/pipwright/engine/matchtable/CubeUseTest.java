package org.pipwright.engine.matchtable;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeEfficiency;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.CubeWalk;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.score.MatchScore;

/** The match model of races against exact values, at scores that its efficiencies were fitted at and at others. */
class CubeUseTest {
    private static final int CASES = 600;

    private static final MatchTable TABLE = ShippedMatchTable.load();

    /** Where the game decides the match, exact chances are those to win the game. */
    private static final MatchTerms LAST_GAME = new MatchTerms(new MatchStakes(new MatchScore(1, 1, false)), TABLE);

    /** An ending of four to six checkers a side at home, those with fewer being too short for any model. */
    private static Position ending(SideIndex sides, SplittableRandom random) {
        int[] planes = new int[Planes.STRIDE];
        for (int at = 0; at <= Planes.SIDE; at += Planes.SIDE) {
            do {
                sides.write(1 + random.nextInt(sides.size() - 1), planes, at);
            } while (Planes.checkers(planes, at, Planes.ON_BOARD) < 4);
            for (int k = Planes.checkers(planes, at, Planes.ON_BOARD); k < Position.FULL; k++) {
                Planes.add(planes, at, Planes.OFF);
            }
        }
        return Position.ofPlanes(planes, 0);
    }

    /** With the walk alone doubling decisions lost 0.02 to 0.15 points of a hundred in these, takes up to 0.1. */
    @ParameterizedTest
    @CsvSource({"3, 3", "5, 3", "3, 5", "5, 5", "7, 4", "4, 7", "9, 9"})
    void decisionsInRacesCostNextToNothing(int mine, int theirs) {
        MatchScore score = new MatchScore(mine, theirs, false);
        MatchTerms terms = new MatchTerms(new MatchStakes(score), TABLE);
        SideIndex sides = EndgameTables.LAST_SIX;
        SplittableRandom random = new SplittableRandom(21);
        double doubling = 0;
        double taking = 0;
        double squares = 0;
        for (int i = 0; i < CASES; i++) {
            Position position = ending(sides, random);
            double win = LAST_GAME.known(position, CubeState.START).orElseThrow();
            CubeValues model =
                    terms.curves(position, GammonShares.NONE, CubeState.START).at(win);
            CubeValues exact = terms.exact(position, CubeState.START).orElseThrow();
            doubling -= exact.cost(model.shouldDouble() ? CubeAction.DOUBLE : CubeAction.ROLL);
            taking -= exact.cost(model.answer());
            squares += Math.pow(model.doubleTake() - exact.doubleTake(), 2);
        }
        assertTrue(doubling / CASES < 1e-4, "doubling decisions lose " + doubling / CASES);
        assertTrue(taking / CASES < 1e-4, "takes lose " + taking / CASES);
        assertTrue(Math.sqrt(squares / CASES) < 0.01, "takes are off by " + Math.sqrt(squares / CASES));
    }

    /** Whoever loses the match anyway turns the cube at the next roll, in any position. */
    @Test
    void aCubeThatIsTurnedAtOnceIsUsedAsTheWalkSays() {
        CubeUse use = new CubeUse(new CubeWalk(50, 16), CubeEfficiency.constant(0.5));
        CubeState mine = new CubeState(2, CubeOwner.ME);
        MatchScore lostAnyway = new MatchScore(4, 2, false);
        assertEquals(0.6, use.rolling(lostAnyway, mine, 0.5, 0.2, 0.6), 1e-12);
        assertEquals(0.6, use.rolling(lostAnyway.swapped(), mine.swapped(), 0.5, 0.2, 0.6), 1e-12);
        MatchScore open = new MatchScore(4, 3, false);
        assertEquals(0.4, use.rolling(open, mine, 0.5, 0.2, 0.6), 1e-12);
        assertEquals(0.4, use.rolling(open.swapped(), mine.swapped(), 0.5, 0.2, 0.6), 1e-12);
        assertEquals(0.6, use.rolling(open, CubeState.START, 0.5, 0.2, 0.6), 1e-12);
    }

    @Test
    void ownersAreHelpedMoreByLongerRaces() {
        CubeEfficiency last = CubeUse.ofRace(1).efficiency();
        for (int pips = 2; pips < 200; pips++) {
            CubeEfficiency next = CubeUse.ofRace(pips).efficiency();
            assertTrue(next.behind() >= last.behind() && next.behind() - last.behind() < 0.02, "at " + pips);
            assertTrue(Math.abs(next.ahead() - last.ahead()) < 0.02, "at " + pips);
            last = next;
        }
        assertEquals(CubeUse.ofRace(120), CubeUse.ofRace(300));
    }
}
