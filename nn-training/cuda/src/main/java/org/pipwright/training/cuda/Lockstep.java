package org.pipwright.training.cuda;

import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;

/**
 * Many games, a turn of each at a time: the results of all rolls go to networks of an accelerator together, and each game
 * goes on with the one whose equity is best for the side that plays.
 *
 * @param <G> what is known of a game besides
 */
final class Lockstep<G extends Lockstep.Game> {
    private static final int TASK = 64;

    /** Results a game on average, at most. */
    private static final int ROOM = 80;

    /** Room besides, since the mean of few games may be far from the usual. More than any roll has. */
    private static final int SPARE = 1 << 14;

    private static final ThreadLocal<PlayGenerator> GENERATOR = ThreadLocal.withInitial(PlayGenerator::new);

    private final List<Network> networks;
    private final int capacity;
    private final Turns<G> turns;

    /** One of the games, and after it the next in its place. */
    static class Game {
        final int[] planes = new int[Planes.STRIDE];
        Dice dice;
        Roll roll;

        /** Rolls thrown so far. */
        int turns;

        /** Whether the side that has just played has won. */
        boolean over;

        /** Whether its results found no room, so that it waits for the next turn with its roll. */
        boolean waits;

        /** Its results among those that a network is asked about. */
        int first;

        int count;
        private boolean opens;

        /** Begins a game; {@code opening} if its first roll is no double. */
        void begin(Position start, boolean opening, Dice thrown) {
            start.copyTo(planes, 0);
            dice = thrown;
            opens = opening;
            turns = 0;
            over = false;
            waits = false;
        }

        void roll() {
            roll = turns == 0 && opens ? dice.opening() : dice.next();
            turns++;
        }

        /** Whether the side that began has thrown the last roll. */
        boolean beginnerPlays() {
            return turns % 2 == 1;
        }
    }

    /** What tells one kind of games from another. */
    interface Turns<G> {
        /** The network that chooses for the side that plays. */
        Network network(G game);

        /** Makes the play where no network does; whether it has. */
        default boolean played(G game, PlayGenerator plays) {
            return false;
        }

        /** The network has chosen this result among several. */
        default void chosen(G game, int[] result) {}
    }

    /** A network of the accelerator, and the results that it is asked about this turn. */
    static final class Network {
        private final int index;
        private final ResultJudge judge;
        private final AtomicInteger used = new AtomicInteger();

        Network(int index, ResultJudge judge) {
            this.index = index;
            this.judge = judge;
        }
    }

    /**
     * Games whose networks have room for so many results a turn, at least those of any one game.
     *
     * @param networks those that choose plays
     */
    Lockstep(int capacity, Turns<G> turns, List<Network> networks) {
        this.capacity = capacity;
        this.turns = turns;
        this.networks = networks;
    }

    /** Room for the results of so many games. */
    static int room(int games) {
        return ROOM * games + SPARE;
    }

    /** A turn of every game. */
    void turn(List<G> games) {
        networks.forEach(network -> network.used.set(0));
        inParallel(games, this::prepare);
        networks.stream()
                .filter(network -> network.used.get() > 0)
                .forEach(network -> network.judge.judge(network.index, network.used.get()));
        inParallel(games, this::finish);
    }

    private static <T> void inParallel(List<T> all, Consumer<T> work) {
        IntStream.range(0, (all.size() + TASK - 1) / TASK).parallel().forEach(task -> all.subList(
                        task * TASK, Math.min(all.size(), (task + 1) * TASK))
                .forEach(work));
    }

    /** Throws the dice, and collects the results if a network is to be asked about them. */
    private void prepare(G game) {
        if (!game.waits) {
            game.roll();
        }
        PlayGenerator generator = GENERATOR.get();
        int count = generator.generate(game.planes, 0, game.roll.high(), game.roll.low());
        game.count = count;
        if (turns.played(game, generator)) {
            game.count = 0;
            return;
        }
        if (count > capacity) {
            throw new IllegalStateException("a roll has " + count + " plays, and there is room for " + capacity);
        }
        Network asked = turns.network(game);
        game.first = asked.used.getAndUpdate(taken -> taken + count <= capacity ? taken + count : taken);
        game.waits = game.first + count > capacity;
        if (!game.waits) {
            asked.judge.results().put(Planes.STRIDE * game.first, generator.results(), 0, Planes.STRIDE * count);
        }
    }

    /** Makes the play after which the network's equity is best. */
    private void finish(G game) {
        if (game.waits) {
            return;
        }
        if (game.count > 0) {
            choose(game, turns.network(game).judge);
        }
        game.over = (Planes.occupied(game.planes, 0) & Planes.ON_BOARD) == 0;
        if (!game.over) {
            Planes.swap(game.planes, 0);
        }
    }

    private void choose(G game, ResultJudge judge) {
        int[] result = new int[Planes.STRIDE];
        judge.results().get(Planes.STRIDE * judge.best(game.first, game.count), result, 0, Planes.STRIDE);
        if (game.count > 1) {
            turns.chosen(game, result);
        }
        System.arraycopy(result, 0, game.planes, 0, Planes.STRIDE);
    }
}
