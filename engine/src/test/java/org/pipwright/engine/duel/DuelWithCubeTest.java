package org.pipwright.engine.duel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.parallel.Post;
import org.pipwright.engine.statistics.RunningMean;
import org.pipwright.engine.statistics.SequentialTest;

/** Duels with the cube: symmetry, threads, what the counts add up to, and luck that is 0 on average. */
class DuelWithCubeTest {
    private static final Contest MONEY = new Contest.Money(MoneyStakes.USUAL);
    private static final Contest MATCH = new Contest.Match(3, ShippedMatchTable.load());
    private static final Entrant ONE = entrant(1);
    private static final Entrant OTHER = entrant(2);

    private static Entrant entrant(long seed) {
        Supplier<PositionEvaluator> evaluators = () -> new NetworkEvaluator(RandomNet.of(seed));
        return Entrant.ofEvaluator("net " + seed, evaluators, 0);
    }

    private static DuelSettings settings(Contest contest, long pairs, long seed, boolean luck) {
        return new DuelSettings(contest, pairs, seed, luck, Optional.empty());
    }

    private static Tally run(Entrant a, Entrant b, DuelSettings settings, int threads) {
        return new Duel(a, b, settings, tally -> {}).run(threads);
    }

    static Stream<Contest> contests() {
        return Stream.of(
                MONEY,
                new Contest.Money(new MoneyStakes(false, true)),
                MATCH,
                new Contest.Match(1, ShippedMatchTable.load()));
    }

    @ParameterizedTest
    @MethodSource("contests")
    void againstItselfEveryPairIsDrawn(Contest contest) {
        Tally tally = run(ONE, ONE, settings(contest, 20, 7, false), 2);
        double half = contest instanceof Contest.Match ? 0.5 : 0;
        assertEquals(new RunningMean(20, half, 0), tally.values());
        assertEquals(tally.aWins(), tally.bWins());
    }

    /** Bit for bit, with luck, and up to the same pair where a test stops early. */
    @ParameterizedTest
    @MethodSource("contests")
    void playedElsewhereTheTallyIsTheSame(Contest contest) {
        Entrant one = RandomNet.entrant(1);
        Entrant other = contest.withCube()
                ? RandomNet.entrant(2)
                : Baselines.named("hitter").orElseThrow();
        DuelSettings luck = settings(contest, 3, 5, true);
        DuelSettings test = settings(contest, 30, 8, false).until(new SequentialTest(-2, 2, 0.4, 0.4));
        for (DuelSettings settings : List.of(luck, test)) {
            List<Tally> here = new ArrayList<>();
            List<Tally> there = new ArrayList<>();
            Tally tally = new Duel(one, other, settings, here::add).run(2);
            assertEquals(tally, new Duel(one, other, settings, there::add).run(new Post()));
            assertEquals(here, there);
        }
    }

    @Test
    void onlyNetsAndBaselinesCanBeSent() {
        Duel duel = new Duel(ONE, OTHER, settings(MONEY, 1, 1, false), tally -> {});
        assertThrows(IllegalArgumentException.class, () -> duel.run(new Post()));
    }

    @ParameterizedTest
    @MethodSource("contests")
    void exchangingSidesExchangesTheResult(Contest contest) {
        Tally there = run(ONE, OTHER, settings(contest, 3, 9, true), 1);
        Tally back = run(OTHER, ONE, settings(contest, 3, 9, true), 2);
        double whole = contest instanceof Contest.Match ? 1 : 0;
        assertEquals(whole - there.values().mean(), back.values().mean(), 1e-12);
        assertEquals(whole - there.adjusted().mean(), back.adjusted().mean(), 1e-9);
        assertEquals(there.values().variance(), back.values().variance(), 1e-12);
        assertEquals(there.aWins(), back.bWins());
        assertEquals(there.bWins(), back.aWins());
        assertEquals(there.cube(), back.cube());
        assertEquals(there.turns(), back.turns());
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 5})
    void threadsMakeNoDifference(int threads) {
        for (Contest contest : List.of(MONEY, MATCH)) {
            Tally alone = run(ONE, OTHER, settings(contest, 70, 10, false), 1);
            assertEquals(alone, run(ONE, OTHER, settings(contest, 70, 10, false), threads));
            assertEquals(70, alone.pairs());
        }
    }

    @Test
    void moneyPointsAreThoseOfTheGames() {
        Tally tally = run(ONE, OTHER, settings(MONEY, 200, 11, false), 2);
        assertEquals(400, tally.games());
        assertEquals(
                tally.values().sum(), (tally.aWins().points() - tally.bWins().points()) / 2.0, 1e-9);
        assertTrue(tally.cube().doubled() > 200 && tally.cube().cubes() > 400, "" + tally);
        assertTrue(tally.aWins().passes() > 5 && tally.bWins().passes() > 5, "" + tally);
        assertTrue(
                tally.cube().doubled() >= tally.aWins().passes() + tally.bWins().passes());
    }

    @Test
    void lookaheadIsPlayedBySide() {
        Supplier<PositionEvaluator> evaluators = () -> new NetworkEvaluator(RandomNet.of(1));
        Entrant ahead = Entrant.ofEvaluator("ahead", evaluators, 1);
        Tally tally = run(ahead, ONE, settings(MONEY, 2, 4, false), 1);
        assertNotEquals(0, tally.values().spread(), "the two play differently");
        assertEquals(
                new RunningMean(1, 0, 0),
                run(ahead, ahead, settings(MONEY, 1, 4, false), 2).values());
    }

    @Test
    void aTestStopsEarlyAndAtTheSamePairWithAnyThreads() {
        SequentialTest test = new SequentialTest(0, 0.5, 0.05, 0.05);
        DuelSettings settings = settings(MONEY, 100_000, 3, false).until(test);
        Tally tally = run(ONE, ONE, settings, 1);
        assertEquals(SequentialTest.Verdict.LOW, test.verdict(tally.best()));
        assertEquals(SequentialTest.MIN_PAIRS, tally.pairs());
        assertEquals(tally, run(ONE, ONE, settings, 4));
    }

    /** The luck taken off is 0 on average: plain and adjusted means differ by no more than the error of the difference. */
    @ParameterizedTest
    @MethodSource("contests")
    void luckLeavesTheMeanWhereItIs(Contest contest) {
        // A match of several games has more luck to look at than a game.
        Tally tally = run(ONE, OTHER, settings(contest, contest.equals(MATCH) ? 10 : 24, 21, true), 2);
        double plain = tally.values().mean();
        double adjusted = tally.adjusted().mean();
        // Nets that know nothing value luck badly: it may even add noise, but must not shift the mean.
        double error =
                Math.hypot(tally.values().standardError(), tally.adjusted().standardError());
        assertEquals(plain, adjusted, 3 * error);
        assertTrue(error > 0);
    }

    @Test
    void longMatchesNeedALongTable() {
        String message = assertThrows(
                        IllegalArgumentException.class, () -> new Contest.Match(26, ShippedMatchTable.load()))
                .getMessage();
        assertEquals(
                "a match goes to 1 to 25 points, where the match table ends, not to 26: play a shorter match or give a"
                        + " longer table",
                message);
        assertThrows(
                IllegalArgumentException.class,
                () -> Entrant.ofEvaluator("deep", ONE.valuers().orElseThrow(), 7));
    }
}
