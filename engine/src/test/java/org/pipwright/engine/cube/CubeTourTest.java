package org.pipwright.engine.cube;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.rules.GameResult;
import org.pipwright.engine.score.MatchScore;

/**
 * A tour of the state space of the cube: 60,000 random money games under four sets of rules and 60,000 random matches.
 * At each decision the actions offered are those of the naive referee; every action not offered is refused.
 */
class CubeTourTest {
    private final SplittableRandom random = new SplittableRandom(20260101);
    private int decisions;
    private int doubles;
    private int crawfordGames;
    private int beavers;
    private int highest;

    @ParameterizedTest
    @CsvSource({"false, false", "true, false", "false, true", "true, true"})
    void moneyGames(boolean jacoby, boolean agreedBeavers) {
        NaiveCubeReferee referee = new NaiveCubeReferee(false, 0, jacoby, agreedBeavers);
        for (int game = 0; game < 15_000; game++) {
            play(referee, new MoneyStakes(jacoby, agreedBeavers), 0);
        }
        assertTrue(doubles > 5_000, "doubles " + doubles);
        assertTrue(highest >= 64, "highest cube " + highest);
        assertEquals(agreedBeavers, beavers > 0);
    }

    @Test
    void matches() {
        int matches = 60_000;
        int longMatches = 0;
        for (int m = 0; m < matches; m++) {
            int length = 1 + random.nextInt(25);
            longMatches += length > 1 ? 1 : 0;
            playMatch(length);
        }
        assertTrue(decisions > 1_000_000, "decisions " + decisions);
        assertEquals(0, beavers);
        assertTrue(crawfordGames > matches / 10 && crawfordGames <= longMatches, "Crawford games " + crawfordGames);
    }

    private void playMatch(int length) {
        NaiveCubeReferee referee = new NaiveCubeReferee(true, length, false, false);
        MatchScore score = MatchScore.ofLength(length);
        while (true) {
            int starter = random.nextInt(2);
            MatchStakes stakes = new MatchStakes(starter == 0 ? score : score.swapped());
            int points = play(referee, stakes, starter);
            crawfordGames += score.crawford() ? 1 : 0;
            int firsts = starter == 0 ? points : -points;
            referee.score[firsts > 0 ? 0 : 1] += Math.abs(firsts);
            assertEquals(referee.matchOver(), score.ends(firsts));
            if (score.ends(firsts)) {
                // The loser has not won: no score passes the length on both sides.
                assertTrue(Math.min(referee.score[0], referee.score[1]) < length);
                return;
            }
            score = score.after(firsts);
            assertEquals(length - referee.score[0], score.mine());
            assertEquals(length - referee.score[1], score.theirs());
        }
    }

    /** Plays a game of random actions and returns the starter's points. */
    private int play(NaiveCubeReferee referee, Stakes stakes, int starter) {
        CubeGame game = new CubeGame(stakes);
        referee.newGame(starter);
        int turned = 0;
        while (true) {
            assertEquals(referee.onRoll == starter, game.firstOnRoll());
            List<CubeAction> actions = new ArrayList<>(game.actions());
            assertEquals(
                    referee.allowed(),
                    actions.stream().map(Enum::name).collect(Collectors.toCollection(java.util.TreeSet::new)));
            int worth = 0;
            if (actions.isEmpty()) {
                if (random.nextInt(8) == 0) {
                    int multiple = 1 + random.nextInt(3);
                    worth = referee.worth(multiple);
                    game.finish(GameResult.values()[multiple - 1]);
                } else {
                    referee.played();
                    game.played();
                }
            } else {
                decisions++;
                refuseAllBut(actions, game);
                CubeAction action = choose(actions);
                doubles += action == CubeAction.DOUBLE ? 1 : 0;
                beavers += action == CubeAction.BEAVER ? 1 : 0;
                turned += action == CubeAction.TAKE ? 1 : action == CubeAction.BEAVER ? 2 : 0;
                worth = referee.act(action.name());
                game.act(action);
            }
            assertEquals(referee.cube, game.cube().value());
            highest = Math.max(highest, referee.cube);
            assertEquals(worth != 0, game.over());
            if (game.over()) {
                int expected = referee.onRoll == starter ? worth : -worth;
                assertEquals(expected, game.points());
                assertTrue(Math.abs(game.points()) <= 3L << turned);
                assertTrue(game.actions().isEmpty());
                return game.points();
            }
            assertEquals(0, game.points());
        }
    }

    private CubeAction choose(List<CubeAction> actions) {
        // Passing ends the game, so it is made rarer: cubes should come to climb.
        CubeAction action = actions.get(random.nextInt(actions.size()));
        return action == CubeAction.PASS && random.nextInt(3) != 0 ? CubeAction.TAKE : action;
    }

    private void refuseAllBut(List<CubeAction> actions, CubeGame game) {
        if (random.nextInt(16) != 0) {
            return;
        }
        for (CubeAction other : EnumSet.complementOf(EnumSet.copyOf(actions))) {
            assertThrows(IllegalArgumentException.class, () -> game.act(other));
        }
        assertThrows(IllegalStateException.class, game::played);
        assertThrows(IllegalStateException.class, () -> game.finish(GameResult.SINGLE));
        assertFalse(game.over());
    }
}
