package org.pipwright.training.cuda;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Tally;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.rules.GameResult;

/**
 * Pairs of games, many at once, whose sides are networks of the accelerator or players of this machine. Both games of a
 * pair have the same dice, with the sides exchanged; they are those of the same duel on the processor.
 */
final class LockstepDuel {
    /** Decisions of the first so many games are kept, to be made again by this machine. */
    private static final int WATCHED = 80;

    private final Accelerator accelerator;
    private final int capacity;
    private final List<Game> games;

    /** What A's network and B's are asked through; made when they are first needed. */
    private final ResultJudge[] judges = new ResultJudge[2];

    private List<MadeDecisions> decisions;

    /** One game at a time. */
    private static final class Game extends Lockstep.Game {
        /** Below 0 once there are no more games to play. */
        long number;

        Dice ties;

        void begin(long next, DuelSettings settings) {
            number = next < 2 * settings.pairs() ? next : -1;
            ties = Dice.ofGame(~settings.seed(), next / 2);
            begin(settings.contest().start(), settings.contest().openingRoll(), Dice.ofGame(settings.seed(), next / 2));
        }

        /** The side that plays, or has just played. */
        int side() {
            return (int) (number + (beginnerPlays() ? 0 : 1)) % 2;
        }
    }

    /** Room for so many games at once. */
    LockstepDuel(int games, Accelerator accelerator) {
        this(games, Lockstep.room(games), accelerator);
    }

    /** The same with room for so many results of a turn, at least those of any one game. */
    LockstepDuel(int games, int capacity, Accelerator accelerator) {
        this.accelerator = accelerator;
        this.capacity = capacity;
        this.games = Stream.generate(Game::new).limit(games).toList();
    }

    /**
     * Plays a duel.
     *
     * @param a one side
     * @param b the other
     * @param settings what decides it; luck is not measured, and there is no cube
     * @param progress told of the tally so far after each turn of all games
     * @param stop asked before each turn
     * @return all pairs, or those up to the verdict or the stop
     */
    Tally play(DuelSide a, DuelSide b, DuelSettings settings, Consumer<Tally> progress, BooleanSupplier stop) {
        decisions = List.of(new MadeDecisions(), new MadeDecisions());
        Sides sides = new Sides(List.of(a, b));
        Lockstep<Game> lockstep = new Lockstep<>(capacity, sides, sides.asked());
        PairCount count = new PairCount(settings);
        long next = 0;
        for (Game game : games) {
            game.begin(next++, settings);
        }
        while (!count.enough() && !stop.getAsBoolean()) {
            lockstep.turn(games.stream().filter(game -> game.number >= 0).toList());
            for (Game game : games) {
                if (game.number >= 0 && game.over) {
                    int won = GameResult.of(game.planes, Planes.SIDE).points();
                    count.add(game.number, game.side() == 0 ? won : -won, game.turns);
                    game.begin(next++, settings);
                }
            }
            progress.accept(count.tally());
        }
        return count.tally();
    }

    /** Who makes the plays: networks of the accelerator, players of this machine. */
    private final class Sides implements Lockstep.Turns<Game> {
        private final Lockstep.Network[] networks = new Lockstep.Network[2];
        private final List<ThreadLocal<Player>> players = new ArrayList<>();

        Sides(List<DuelSide> sides) {
            for (int side = 0; side < 2; side++) {
                if (sides.get(side) instanceof DuelSide.OnAccelerator on) {
                    judges[side] = judges[side] == null ? accelerator.results(capacity) : judges[side];
                    networks[side] = new Lockstep.Network(on.net(), judges[side]);
                }
                players.add(
                        sides.get(side) instanceof DuelSide.OnThreads on
                                ? ThreadLocal.withInitial(on.players())
                                : null);
            }
        }

        List<Lockstep.Network> asked() {
            return Arrays.stream(networks).filter(Objects::nonNull).toList();
        }

        @Override
        public Lockstep.Network network(Game game) {
            return networks[game.side()];
        }

        @Override
        public boolean played(Game game, PlayGenerator plays) {
            if (network(game) != null) {
                return false;
            }
            int chosen = players.get(game.side()).get().choose(game.planes, 0, plays, game.ties);
            System.arraycopy(plays.results(), Planes.STRIDE * chosen, game.planes, 0, Planes.STRIDE);
            return true;
        }

        @Override
        public void chosen(Game game, int[] result) {
            if (game.number < WATCHED) {
                decisions.get(game.side()).add(game.planes, 0, game.roll, result);
            }
        }
    }

    /** Decisions that a side's network made in the first games of the last duel. */
    MadeDecisions decisions(int side) {
        return decisions.get(side);
    }
}
