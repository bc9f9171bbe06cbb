package org.pipwright.training.cuda;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.rules.GameResult;
import org.pipwright.training.device.DeviceSelfPlay;
import org.pipwright.training.device.SelfPlayRules;
import org.pipwright.training.device.SelfPlayedGame;

/** Games of one network against itself, many at once, with what it says of some of their positions. */
final class LockstepSelfPlay {
    private static final int GAMES = 8192;

    /** Decisions of the first so many games are kept, to be made again by this machine. */
    private static final int WATCHED = 80;

    private final Accelerator accelerator;
    private final SelfPlayRules rules;
    private final List<Game> games;
    private final Lockstep<Game> lockstep;
    private final MadeDecisions decisions = new MadeDecisions();

    /** One game at a time. */
    private static final class Game extends Lockstep.Game {
        int[] takenPlanes = new int[8 * Planes.STRIDE];
        float[] chances = new float[8 * Outcomes.COUNT];
        boolean[] beginnerOnRoll = new boolean[8];
        int taken;
        long number;
        int firstTaken;

        void begin(long game, SelfPlayRules rules) {
            begin(Position.start(), true, Dice.ofGame(rules.seed(), 2 * game));
            number = game;
            firstTaken = Dice.ofGame(rules.seed(), 2 * game + 1).below(rules.every());
            taken = 0;
        }

        /** Whether its position is one to take, and is not taken yet. */
        boolean toTake(SelfPlayRules rules) {
            return !waits && turns % rules.every() == firstTaken;
        }

        void take(float[] answers, int at) {
            if (taken == beginnerOnRoll.length) {
                takenPlanes = Arrays.copyOf(takenPlanes, 2 * takenPlanes.length);
                chances = Arrays.copyOf(chances, 2 * chances.length);
                beginnerOnRoll = Arrays.copyOf(beginnerOnRoll, 2 * taken);
            }
            System.arraycopy(planes, 0, takenPlanes, taken * Planes.STRIDE, Planes.STRIDE);
            System.arraycopy(answers, at, chances, taken * Outcomes.COUNT, Outcomes.COUNT);
            beginnerOnRoll[taken++] = !beginnerPlays();
        }

        /** The game, which the side that has just played won. */
        SelfPlayedGame ended() {
            int points = GameResult.of(planes, Planes.SIDE).points();
            return new SelfPlayedGame(
                    Arrays.copyOf(takenPlanes, taken * Planes.STRIDE),
                    Arrays.copyOf(chances, taken * Outcomes.COUNT),
                    Arrays.copyOf(beginnerOnRoll, taken),
                    points - 1 + (beginnerPlays() ? 0 : Outcomes.COUNT / 2));
        }
    }

    /** Room for so many games at once and so many results of a turn, at least those of any one game. */
    LockstepSelfPlay(Accelerator accelerator, SelfPlayRules rules, int games, int capacity) {
        this.accelerator = accelerator;
        this.rules = rules;
        this.games = Stream.generate(Game::new).limit(games).toList();
        Lockstep.Network network = new Lockstep.Network(0, accelerator.results(capacity));
        lockstep = new Lockstep<>(capacity, new Moves(network), List.of(network));
    }

    /** One network moves for both sides. */
    private final class Moves implements Lockstep.Turns<Game> {
        private final Lockstep.Network network;

        Moves(Lockstep.Network network) {
            this.network = network;
        }

        @Override
        public Lockstep.Network network(Game game) {
            return network;
        }

        @Override
        public void chosen(Game game, int[] result) {
            if (game.number < WATCHED) {
                decisions.add(game.planes, 0, game.roll, result);
            }
        }
    }

    /** Plays until no more games are wanted. */
    static DeviceSelfPlay play(
            Function<Recipe, Accelerator> accelerators, SelfPlayRules rules, Predicate<SelfPlayedGame> games) {
        return play(accelerators, rules, GAMES, games);
    }

    /** The same with so many games at once. */
    static DeviceSelfPlay play(
            Function<Recipe, Accelerator> accelerators,
            SelfPlayRules rules,
            int atOnce,
            Predicate<SelfPlayedGame> games) {
        GameNets.requireFits(rules.net());
        ResidualShape shape = GameNets.shape(rules.net());
        Accelerator accelerator = accelerators.apply(Recipe.ofGames(shape, shape, 1, 0));
        GameNets.add(rules.net(), accelerator);
        LockstepSelfPlay play = new LockstepSelfPlay(accelerator, rules, atOnce, Lockstep.room(atOnce));
        play.play(games);
        return new DeviceSelfPlay(accelerator.description(), play.decisions.compare(rules.net()));
    }

    /** Plays until no more games are wanted, and tells of them in the order of their numbers: long ones hold others up. */
    void play(Predicate<SelfPlayedGame> wanted) {
        Map<Long, SelfPlayedGame> early = new HashMap<>();
        long next = 0;
        long awaited = 0;
        for (Game game : games) {
            game.begin(next++, rules);
        }
        while (true) {
            take();
            lockstep.turn(games);
            for (Game game : games) {
                if (game.over) {
                    early.put(game.number, game.ended());
                    game.begin(next++, rules);
                }
            }
            for (; early.containsKey(awaited); awaited++) {
                if (!wanted.test(early.remove(awaited))) {
                    return;
                }
            }
        }
    }

    /** Asks about the positions to take. */
    private void take() {
        List<Game> asked = games.stream().filter(game -> game.toTake(rules)).toList();
        int[] positions = new int[Planes.STRIDE * asked.size()];
        float[] answers = new float[Outcomes.COUNT * asked.size()];
        for (int i = 0; i < asked.size(); i++) {
            System.arraycopy(asked.get(i).planes, 0, positions, Planes.STRIDE * i, Planes.STRIDE);
        }
        accelerator.ask(0, positions, asked.size(), answers);
        for (int i = 0; i < asked.size(); i++) {
            asked.get(i).take(answers, Outcomes.COUNT * i);
        }
    }
}
