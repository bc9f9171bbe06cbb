package org.pipwright.engine.duel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.statistics.RunningMean;
import org.pipwright.engine.statistics.SequentialTest;

/** Symmetry of duels, and that threads make no difference. */
class DuelTest {
    private static final Entrant NET = RandomNet.entrant(1);
    private static final Entrant OTHER_NET = RandomNet.entrant(2);

    private static Tally run(Entrant a, Entrant b, DuelSettings settings, int threads) {
        return new Duel(a, b, settings, tally -> {}).run(threads);
    }

    private static Entrant baseline(String name) {
        return Baselines.named(name).orElseThrow();
    }

    static Stream<Entrant> everybody() {
        return Stream.concat(Stream.of(NET), Baselines.names().stream().map(DuelTest::baseline));
    }

    @ParameterizedTest
    @MethodSource("everybody")
    void againstItselfEveryPairIsDrawn(Entrant entrant) {
        Tally tally = run(entrant, entrant, DuelSettings.fullGames(40, 7), 2);
        assertEquals(new RunningMean(40, 0, 0), tally.values());
        assertEquals(tally.aWins(), tally.bWins());
        assertEquals(80, tally.aWins().total() + tally.bWins().total());
    }

    @Test
    void luckAgainstItselfIsDrawnToo() {
        Tally tally = run(NET, NET, DuelSettings.fullGames(2, 8).withLuck(), 1);
        assertEquals(new RunningMean(2, 0, 0), tally.adjusted());
    }

    @Test
    void exchangingSidesChangesSignsOnly() {
        DuelSettings settings = DuelSettings.fullGames(3, 9).withLuck();
        for (Entrant b : List.of(OTHER_NET, baseline("random"))) {
            Tally one = run(NET, b, settings, 2);
            Tally other = run(b, NET, settings, 1);
            assertEquals(one.aWins(), other.bWins());
            assertEquals(one.bWins(), other.aWins());
            assertEquals(negated(one.values()), other.values());
            assertEquals(negated(one.adjusted()), other.adjusted());
            assertEquals(one.turns(), other.turns());
        }
    }

    private static RunningMean negated(RunningMean moments) {
        return new RunningMean(moments.count(), -moments.mean(), moments.spread());
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 8})
    void threadsMakeNoDifference(int threads) {
        DuelSettings settings = DuelSettings.fullGames(150, 10);
        Tally alone = run(NET, baseline("pips"), settings, 1);
        assertEquals(alone, run(NET, baseline("pips"), settings, threads));
        assertEquals(300, alone.games());
        assertEquals(
                alone.values().sum(), (alone.aWins().points() - alone.bWins().points()) / 2.0, 1e-9);
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 5})
    void threadsMakeNoDifferenceToAnEarlyStop(int threads) {
        SequentialTest test = new SequentialTest(0, 0.2, 0.05, 0.05);
        DuelSettings settings = DuelSettings.fullGames(100_000, 11).until(test);
        Tally alone = run(baseline("racer"), baseline("pips"), settings, 1);
        assertTrue(alone.pairs() < 100_000, "it stops early");
        assertNotEquals(SequentialTest.Verdict.UNDECIDED, test.verdict(alone.best()));
        assertEquals(alone, run(baseline("racer"), baseline("pips"), settings, threads));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 3})
    void lookaheadIsPlayedBySideAndThreadsMakeNoDifference(int threads) {
        Entrant ahead = Entrant.ofModel("ahead", RandomNet.of(1), 1);
        DuelSettings settings =
                new DuelSettings(new Contest.Cubeless(Position.start(2), true), 20, 4, false, Optional.empty());
        Tally tally = run(ahead, NET, settings, threads);
        assertEquals(run(ahead, NET, settings, 2), tally);
        assertNotEquals(0, tally.values().spread(), "the two play differently");
        assertEquals(
                new RunningMean(20, 0, 0), run(ahead, ahead, settings, threads).values());
    }

    @Test
    void seedsMakeADifference() {
        Tally one = run(NET, OTHER_NET, DuelSettings.fullGames(10, 1), 1);
        assertNotEquals(one, run(NET, OTHER_NET, DuelSettings.fullGames(10, 2), 1));
    }

    @Test
    void progressComesInOrder() {
        List<Tally> told = new ArrayList<>();
        Tally end = new Duel(baseline("random"), baseline("pips"), DuelSettings.fullGames(300, 3), told::add).run(4);
        List<Long> expected = new ArrayList<>();
        for (long pairs = Duel.BLOCK; pairs < 300; pairs += Duel.BLOCK) {
            expected.add(pairs);
        }
        expected.add(300L);
        assertEquals(expected, told.stream().map(Tally::pairs).toList());
        assertEquals(end, told.get(told.size() - 1));
    }

    @Test
    void stoppingKeepsWhatIsKnown() {
        Duel[] duel = new Duel[1];
        duel[0] = new Duel(
                baseline("random"), baseline("pips"), DuelSettings.fullGames(1_000_000, 3), tally -> duel[0].stop());
        Tally known = duel[0].run(2);
        assertTrue(known.pairs() == Duel.BLOCK, "pairs: " + known.pairs());
        assertEquals(run(baseline("random"), baseline("pips"), DuelSettings.fullGames(known.pairs(), 3), 1), known);
    }

    @Test
    void aFailingPlayerFailsTheDuel() {
        Entrant broken = Entrant.of("broken", () -> (planes, at, legal, ties) -> {
            throw new IllegalStateException("out of order");
        });
        Duel duel = new Duel(broken, NET, DuelSettings.fullGames(1000, 1), tally -> {});
        Throwable thrown = assertThrows(IllegalStateException.class, () -> duel.run(2));
        assertEquals("out of order", thrown.getCause().getMessage());
    }

    @Test
    void luckNeedsAValuer() {
        DuelSettings settings = DuelSettings.fullGames(1, 1).withLuck();
        String message = assertThrows(
                        IllegalArgumentException.class,
                        () -> new Duel(baseline("pips"), baseline("random"), settings, tally -> {}))
                .getMessage();
        assertEquals(
                "luck is valued by a net, and neither pips nor random has one: leave luck out, or let a net play",
                message);
        assertTrue(run(baseline("pips"), NET, settings, 1).luckMeasured());
    }

    @Test
    void unknownBaselinesAreNotThere() {
        assertEquals(Optional.empty(), Baselines.named("nobody"));
    }
}
