package org.pipwright.engine.cube;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.rules.GameResult;
import org.pipwright.engine.score.MatchScore;

/** What each kind of stakes allows, by the rules. */
@Tag("fast")
class StakesTest {
    private static final CubeState MINE = new CubeState(2, CubeOwner.ME);
    private static final CubeState THEIRS = new CubeState(2, CubeOwner.THEM);

    /** The cube that a side has, that after a take, and that after a beaver, as far as each may come about. */
    @Test
    void aSideMayRollWithTheCubesThatADoubleCanLeaveIt() {
        Stakes beavers = new MoneyStakes(true, true);
        CubeState four = new CubeState(4, CubeOwner.THEM);
        assertEquals(List.of(MINE, four, new CubeState(8, CubeOwner.THEM)), beavers.cubesToRollWith(MINE));
        assertEquals(List.of(MINE, four), MoneyStakes.USUAL.cubesToRollWith(MINE));
        assertEquals(List.of(THEIRS), beavers.cubesToRollWith(THEIRS));
    }

    @Test
    void aBeaverNeedsRoomForFourTimesTheCube() {
        Stakes beavers = new MoneyStakes(true, true);
        assertTrue(beavers.mayBeaver(new CubeState(CubeState.HIGHEST / 4, CubeOwner.ME)));
        assertFalse(beavers.mayBeaver(new CubeState(CubeState.HIGHEST / 2, CubeOwner.ME)));
    }

    @Test
    void withoutACubeNobodyDoublesAndGamesCountByTheirKind() {
        Stakes none = new CubelessStakes();
        assertFalse(none.mayDouble(CubeState.START));
        assertFalse(none.mayBeaver(CubeState.START));
        assertEquals(1, none.points(GameResult.SINGLE, CubeState.START));
        assertEquals(2, none.points(GameResult.GAMMON, CubeState.START));
        assertEquals(3, none.points(GameResult.BACKGAMMON, CubeState.START));
        assertEquals(none, none.swapped());
    }

    @Test
    void whoNeedsNoMoreThanTheCubeShowsWinsTheMatchWithoutDoubling() {
        MatchStakes stakes = new MatchStakes(new MatchScore(2, 5, false));
        assertFalse(stakes.winsAnyway(CubeState.START));
        assertTrue(stakes.winsAnyway(MINE));
        assertTrue(stakes.winsAnyway(new CubeState(4, CubeOwner.CENTRE)));
        assertFalse(stakes.swapped().winsAnyway(MINE));
    }
}
