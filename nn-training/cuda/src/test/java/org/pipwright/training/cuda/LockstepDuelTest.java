package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.duel.Baselines;
import org.pipwright.engine.duel.Duel;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.duel.Tally;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.statistics.SequentialTest;
import org.pipwright.models.ModelCatalog;
import org.pipwright.training.device.DeviceDuel;
import org.pipwright.training.device.DevicePlayer;

/** Duels in lockstep against engine's, game for game. */
class LockstepDuelTest {
    private static final BooleanSupplier GO_ON = () -> false;

    /** A player of either kind of duel. */
    private record Both(Entrant entrant, DevicePlayer player) {
        static Both named(String name) {
            if (Baselines.names().contains(name)) {
                Entrant entrant = Baselines.named(name).orElseThrow();
                return new Both(entrant, new DevicePlayer(entrant.players(), Optional.empty()));
            }
            Model model = name.contains("x")
                    ? new Model(
                            ResidualNets.network(ResidualShape.parse(name), Weights.of(ResidualShape.parse(name))),
                            Map.of())
                    : ModelCatalog.shipped().load(name);
            Entrant entrant = Entrant.ofModel(name, model, 0);
            return new Both(entrant, new DevicePlayer(entrant.players(), Optional.of(model.net())));
        }
    }

    private static DeviceDuel onDevice(Both a, Both b, DuelSettings settings, BooleanSupplier stop) {
        return new DuelOnDevice(PlainAccelerator::new, a.player(), b.player()).play(settings, soFar -> {}, stop);
    }

    private static Tally onProcessor(Both a, Both b, DuelSettings settings) {
        return new Duel(a.entrant(), b.entrant(), settings, soFar -> {}).run(2);
    }

    /** Sums of pairs in another grouping end in other last digits. */
    private static void same(Tally expected, Tally tally) {
        assertEquals(expected.aWins(), tally.aWins());
        assertEquals(expected.bWins(), tally.bWins());
        assertEquals(expected.turns(), tally.turns());
        assertEquals(expected.pairs(), tally.pairs());
        assertEquals(expected.values().mean(), tally.values().mean(), 1e-9);
        assertEquals(expected.values().standardError(), tally.values().standardError(), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({
        "128x1, fifth, true, true",
        "fifth, builder, true, false",
        "128x1, 128x2, true, true",
        "builder, random, false, false"
    })
    void theGamesAreThoseOfTheProcessor(String a, String b, boolean firstOnDevice, boolean secondOnDevice) {
        Both one = Both.named(a);
        Both other = Both.named(b);
        DuelSettings settings = DuelSettings.fullGames(a.equals("fifth") || b.equals("fifth") ? 3 : 10, 3);
        DeviceDuel played = onDevice(one, other, settings, GO_ON);
        same(onProcessor(one, other, settings), played.tally());
        assertEquals("plain loops", played.description());
        assertEquals(firstOnDevice, played.a().onDevice());
        assertEquals(secondOnDevice, played.b().onDevice());
        if (firstOnDevice) {
            assertTrue(played.a().compared() > 40, played.toString());
            assertEquals(0, played.a().differing());
            assertEquals(0, played.a().cost());
        }
    }

    @Test
    void aSequentialTestStopsBothAtTheSamePair() {
        Both one = Both.named("builder");
        Both other = Both.named("random");
        DuelSettings settings = DuelSettings.fullGames(5000, 3).until(new SequentialTest(0, 0.5, 0.05, 0.05));
        Tally expected = onProcessor(one, other, settings);
        assertTrue(expected.pairs() < 5000, expected.toString());
        same(expected, onDevice(one, other, settings, GO_ON).tally());
    }

    /** What is known after a stop are the first pairs, long games among them. */
    @Test
    void aStopLeavesTheFirstPairs() {
        Both one = Both.named("builder");
        Both other = Both.named("racer");
        AtomicInteger turns = new AtomicInteger();
        DuelSettings settings = DuelSettings.fullGames(100_000, 8);
        Tally tally = onDevice(one, other, settings, () -> turns.incrementAndGet() > 110)
                .tally();
        assertTrue(tally.pairs() > 20 && tally.pairs() < 100_000, tally.toString());
        same(onProcessor(one, other, DuelSettings.fullGames(tally.pairs(), 8)), tally);
    }

    /** Games whose plays find no room wait with their dice, and come out the same. */
    @Test
    void tightRoomChangesNothing() {
        Both one = Both.named("128x1");
        Both other = Both.named("racer");
        DuelSettings settings = DuelSettings.fullGames(40, 3);
        Tally tally = new LockstepDuel(80, 900, accelerator(one))
                .play(
                        new DuelSide.OnAccelerator(0),
                        new DuelSide.OnThreads(other.player().players()),
                        settings,
                        soFar -> {},
                        GO_ON);
        same(onProcessor(one, other, settings), tally);
    }

    /** Decisions of one net, made again by another. */
    @Test
    void decisionsThatDifferAreCounted() {
        Both one = Both.named("128x1");
        LockstepDuel duel = new LockstepDuel(20, accelerator(one));
        duel.play(
                new DuelSide.OnAccelerator(0),
                new DuelSide.OnThreads(Both.named("pips").player().players()),
                DuelSettings.fullGames(10, 1),
                soFar -> {},
                GO_ON);
        var own = duel.decisions(0).compare(DuelSide.net(one.player()));
        var other = duel.decisions(0).compare(DuelSide.net(Both.named("128x2").player()));
        assertEquals(own.compared(), other.compared());
        assertEquals(0, own.differing());
        assertTrue(other.differing() > other.compared() / 10 && other.cost() > 0, other.toString());
        assertEquals(0, duel.decisions(1).compare(DuelSide.net(one.player())).compared());
    }

    private static Accelerator accelerator(Both player) {
        ResidualShape shape = ResidualNets.shape(DuelSide.net(player.player()));
        Accelerator accelerator = new PlainAccelerator(Recipe.ofGames(shape, shape, 1, 0));
        accelerator.add(shape, ResidualNets.weights(DuelSide.net(player.player())));
        return accelerator;
    }
}
