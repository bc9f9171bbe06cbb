package org.pipwright.engine.duel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cubeplay.StakedGames;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Dice;

/** Duels over small races whose exact values come from plain recursion. */
class DuelAgainstExactTest {
    private final ExactRace exact = new ExactRace();

    /** A position with so many checkers a side; those not on the board are borne off. */
    private static Position race(String text, int checkers) {
        Position read = PositionText.parse(text);
        int[] me = new int[26];
        int[] opponent = new int[26];
        for (int place = 1; place <= 25; place++) {
            me[place] = read.count(place);
            opponent[place] = read.opponentCount(place);
        }
        me[0] = checkers - Arrays.stream(me).sum();
        opponent[0] = checkers - Arrays.stream(opponent).sum();
        return Position.of(me, opponent);
    }

    /** Plays as if winning and losing were exchanged. */
    private Player contrary() {
        PositionEvaluator exchanged = (planes, at, out, outAt) -> {
            exact.evaluate(planes, at, out, outAt);
            Chances.swap(out, outAt);
        };
        return new EvaluatingPlayer(exchanged);
    }

    /** Gammons are possible where no checker is off yet; the valuer knows nothing, and the mean must be right all the same. */
    @ParameterizedTest
    @CsvSource({"1@3 1@1 / 1@20 1@5, 2", "1@6 1@4 / 1@6 1@3, 2", "2@4 1@6 / 1@5 2@3, 4", "1@6 1@5 1@2 / 1@6 2@3, 3"})
    void meansAreTheExactOne(String text, int checkers) {
        Position start = race(text, checkers);
        double asFirst = ExactRace.points(start, new EvaluatingPlayer(exact), contrary());
        double asSecond = -ExactRace.points(start, contrary(), new EvaluatingPlayer(exact));
        double expected = (asFirst + asSecond) / 2;
        assertTrue(expected > 0.005, "the players differ by " + expected);

        Entrant best = new Entrant(
                "best", () -> new EvaluatingPlayer(exact), RandomNet.entrant(3).valuers(), 0);
        Entrant contrary = Entrant.of("contrary", this::contrary);
        DuelSettings settings = new DuelSettings(new Contest.Cubeless(start, false), 10_000, 5, true, Optional.empty());
        Tally tally = new Duel(best, contrary, settings, soFar -> {}).run(1);
        assertEquals(expected, tally.values().mean(), 4 * tally.values().standardError());
        assertEquals(expected, tally.adjusted().mean(), 4 * tally.adjusted().standardError());
    }

    /** With exact values and best play nothing but luck is left: every game is worth what its start is. */
    @ParameterizedTest
    @CsvSource({"1@3 1@1 / 1@20 1@5, 2", "1@6 1@4 / 1@6 1@3, 2", "2@4 1@6 / 1@5 2@3, 4", "1@6 1@5 1@2 / 1@6 2@3, 3"})
    void exactValuesTakeAllVarianceAway(String text, int checkers) {
        Position start = race(text, checkers);
        double value = ExactRace.equity(exact.chances(start));
        StakedGames.Side best = StakedGames.Side.blind(new EvaluatingPlayer(exact));
        Contest contest = new Contest.Cubeless(start, false);
        Account account = new Account(new DuelLuck(exact, exact, contest::terms), () -> false);
        StakedGames games = new StakedGames();
        Set<Integer> results = new HashSet<>();
        for (int game = 0; game < 500; game++) {
            account.open(true);
            CubeGame stakes = new CubeGame(contest.stakes());
            account.begins(true, false, stakes);
            int points = games.play(start, false, stakes, best, best, Dice.ofGame(6, game), null, account);
            assertEquals(value, points - account.luck(), 1e-5);
            results.add(points);
        }
        assertTrue(results.size() > 1, "games end differently: " + results);
    }

    /**
     * One checker each on the 6 point, by hand: nine throws of 36 (1-1 and the eight of 2-1, 3-1, 3-2 and 4-1) do not bear
     * it off, and leave it on the 3 point or nearer, from where every throw does.
     */
    @Test
    void recursionKnowsTheSmallestRace() {
        double[] chances = exact.chances(race("1@6 / 1@6", 2));
        assertEquals(27 / 36.0 + 9 / 36.0 * 9 / 36.0, chances[0], 1e-12);
        assertEquals(1, chances[0] + chances[3], 1e-12);
    }
}
