package org.pipwright.engine.cube;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.pipwright.engine.rules.GameResult;
import org.pipwright.engine.score.MatchScore;

/** What games come to at each cube level: worked cases from the rules. */
@Tag("fast")
class CubeScoringTest {
    private static final Stakes NO_JACOBY = new MoneyStakes(false, false);

    /** A game in which the side on roll doubles and is taken so many times in a row, each time after a turn. */
    private static CubeGame doubled(Stakes stakes, int times) {
        CubeGame game = new CubeGame(stakes);
        game.played();
        for (int i = 0; i < times; i++) {
            game.act(CubeAction.DOUBLE);
            game.act(CubeAction.TAKE);
            game.played();
        }
        return game;
    }

    @ParameterizedTest
    @CsvSource({"0, 1", "1, 2", "2, 4", "3, 8", "6, 64"})
    void aPassCostsTheCubeBeforeTheDouble(int turned, int points) {
        CubeGame game = doubled(MoneyStakes.USUAL, turned);
        boolean first = game.firstOnRoll();
        game.act(CubeAction.DOUBLE);
        game.act(CubeAction.PASS);
        assertTrue(game.over());
        assertEquals(first ? points : -points, game.points());
    }

    @ParameterizedTest
    @CsvSource({
        "0, SINGLE, 1", "0, GAMMON, 2", "0, BACKGAMMON, 3",
        "1, SINGLE, 2", "1, GAMMON, 4", "1, BACKGAMMON, 6",
        "2, SINGLE, 4", "2, GAMMON, 8", "2, BACKGAMMON, 12",
        "3, SINGLE, 8", "3, GAMMON, 16", "3, BACKGAMMON, 24",
    })
    void anEndingCountsTimesTheCube(int turned, GameResult result, int points) {
        for (Stakes stakes : new Stakes[] {NO_JACOBY, new MatchStakes(MatchScore.ofLength(99))}) {
            CubeGame game = doubled(stakes, turned);
            game.act(CubeAction.ROLL);
            boolean first = game.firstOnRoll();
            game.finish(result);
            assertEquals(first ? points : -points, game.points());
        }
    }

    @ParameterizedTest
    @EnumSource(GameResult.class)
    void theJacobyRuleHoldsUntilTheCubeIsTurnedAndInMoneyPlayOnly(GameResult result) {
        assertEquals(1, MoneyStakes.USUAL.points(result, CubeState.START));
        assertEquals(result.points(), NO_JACOBY.points(result, CubeState.START));
        assertEquals(result.points(), new MatchStakes(MatchScore.ofLength(5)).points(result, CubeState.START));
        assertEquals(2 * result.points(), MoneyStakes.USUAL.points(result, new CubeState(2, CubeOwner.ME)));
        assertEquals(2 * result.points(), MoneyStakes.USUAL.points(result, new CubeState(2, CubeOwner.THEM)));
    }

    @Test
    void nobodyDoublesInTheCrawfordGameAndTheTrailerMayAgainAfterIt() {
        CubeGame crawford = new CubeGame(new MatchStakes(new MatchScore(1, 4, true)));
        crawford.played();
        assertEquals(Set.of(CubeAction.ROLL), crawford.actions());
        CubeGame after = new CubeGame(new MatchStakes(new MatchScore(1, 4, false)));
        after.played();
        assertEquals(Set.of(CubeAction.ROLL, CubeAction.DOUBLE), after.actions());
        // The double is the trailer's good advice, not a rule: rolling is allowed too.
        after.act(CubeAction.ROLL);
        assertFalse(after.over());
    }

    @Test
    void aBeaverTurnsTheCubeTwiceAndKeepsIt() {
        CubeGame game = new CubeGame(new MoneyStakes(true, true));
        game.played();
        game.act(CubeAction.DOUBLE);
        game.act(CubeAction.BEAVER);
        assertEquals(new CubeState(4, CubeOwner.THEM), game.cube());
        game.played();
        assertEquals(Set.of(CubeAction.ROLL, CubeAction.DOUBLE), game.actions());
        game.act(CubeAction.DOUBLE);
        game.act(CubeAction.PASS);
        assertEquals(4, game.points());
    }

    @ParameterizedTest
    @CsvSource({"3, ME", "0, CENTRE", "-2, ME", "1, ME", "1, THEM", "2097152, ME"})
    void cubesThatCannotBeAreRefused(int value, CubeOwner owner) {
        assertThrows(IllegalArgumentException.class, () -> new CubeState(value, owner));
    }

    @ParameterizedTest
    @CsvSource({
        "2, 5, 2, ME, true",
        "3, 5, 2, ME, false",
        "5, 2, 2, THEM, true",
        "1, 5, 2, THEM, false",
        "1, 1, 1, CENTRE, false"
    })
    void aCubeIsDeadWhenItsOwnerNeedsNoMore(int mine, int theirs, int value, CubeOwner owner, boolean dead) {
        MatchStakes stakes = new MatchStakes(new MatchScore(mine, theirs, false));
        assertEquals(dead, stakes.dead(new CubeState(value, owner)));
        assertEquals(dead, stakes.swapped().dead(new CubeState(value, owner).swapped()));
    }

    @Test
    void theHighestCubeIsNotTurned() {
        CubeState highest = new CubeState(CubeState.HIGHEST, CubeOwner.ME);
        assertFalse(MoneyStakes.USUAL.mayDouble(highest));
        assertFalse(new MoneyStakes(true, true).mayBeaver(new CubeState(CubeState.HIGHEST / 2, CubeOwner.ME)));
    }

    /** Rolls and ends are told only when a roll is due, and sides change with each. */
    @Test
    void aGameIsPlayedInItsOrder() {
        Stakes stakes = new MatchStakes(new MatchScore(3, 5, false));
        CubeGame game = new CubeGame(stakes);
        assertTrue(game.firstOnRoll());
        assertEquals(stakes, game.stakes());
        game.played();
        assertFalse(game.firstOnRoll());
        assertEquals(stakes.swapped(), game.stakes());
        assertThrows(IllegalStateException.class, game::played);
        assertThrows(IllegalStateException.class, () -> game.finish(GameResult.SINGLE));
        game.act(CubeAction.DOUBLE);
        game.act(CubeAction.PASS);
        assertTrue(game.passed());
        assertEquals(-1, game.points());
        CubeGame played = new CubeGame(stakes);
        played.finish(GameResult.GAMMON);
        assertTrue(played.over());
        assertFalse(played.passed());
        assertEquals(2, played.points());
    }

    @Test
    void aBeaverMakesFourTimesTheCube() {
        assertEquals(new CubeState(8, CubeOwner.THEM), new CubeState(2, CubeOwner.ME).beavered());
    }
}
