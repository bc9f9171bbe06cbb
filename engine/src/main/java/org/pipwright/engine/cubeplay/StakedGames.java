package org.pipwright.engine.cubeplay;

import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.function.Supplier;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.match.TurnListener;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;
import org.pipwright.engine.score.MatchScore;

/**
 * Plays games for what is at stake, on the one game loop: before each roll the cube is asked about if there is one, and a
 * pass ends the game. Serves one thread.
 */
public final class StakedGames {
    private final GameLoop loop = new GameLoop();
    private final float[] end = new float[Outcomes.COUNT];

    /**
     * A side.
     *
     * @param checkers who moves its checkers
     * @param cube who decides about its cube
     */
    public record Side(Player checkers, CubePlayer cube) {
        /**
         * A side for games without the cube.
         *
         * @param player moves its checkers
         * @return the side, for one thread
         */
        public static Side blind(Player player) {
            return new Side(player, (position, game) -> {
                throw new IllegalStateException("asked about a cube where there should be none");
            });
        }

        /**
         * A side that plays for what its terms count, with checkers and cube.
         *
         * @param evaluator gives chances
         * @param terms how to judge under given stakes
         * @param lookahead future rolls to average over
         * @return the side, for one thread
         */
        public static Side judging(PositionEvaluator evaluator, Function<Stakes, CubeTerms> terms, int lookahead) {
            JudgingPlayer player = new JudgingPlayer(evaluator, terms, lookahead);
            return new Side(player, player);
        }
    }

    /** Truncates games. */
    @FunctionalInterface
    public interface Ending {
        /** Every game is played to its end. */
        Ending NONE = (planes, at, game) -> false;

        /**
         * Asked before each roll and before the cube is asked about.
         *
         * @param planes array that holds the unfinished position
         * @param at index of its first plane
         * @param game the game's cube, seen from the side on roll
         * @return whether to truncate the game here
         */
        boolean ends(int[] planes, int at, CubeGame game);
    }

    /** Told of the games of a match. */
    public interface Watcher extends TurnListener {
        /**
         * A game is about to begin.
         *
         * @param score the score before it, seen from the first side of the match
         * @param starts whether that side is on roll first
         * @param game the game's cube, which the watcher may look at as the game goes on
         */
        void begins(MatchScore score, boolean starts, CubeGame game);

        /**
         * The game that began last is over.
         *
         * @param points of the first side of the match, negative if it has lost them
         */
        void ended(int points);
    }

    /** Creates one. */
    public StakedGames() {}

    /**
     * Plays a game from the start; the first player has won the opening roll, which the dice give.
     *
     * @param game the cube's side of the game, before its first roll; it is played to its end
     * @param first side on roll
     * @param second the other side
     * @param dice where rolls come from
     * @param listener told of each turn
     * @return points of the first side, negative if it loses them
     */
    public int play(CubeGame game, Side first, Side second, Dice dice, TurnListener listener) {
        return play(Position.start(), true, game, first, second, dice, dice, listener);
    }

    /**
     * Plays a game to its end.
     *
     * @param start an unfinished position with the first side on roll
     * @param openingRoll whether the first roll is that of a new game, which is never a double
     * @param game the cube's side of the game, before its first roll; it is played to its end
     * @param first side on roll
     * @param second the other side
     * @param dice where rolls come from
     * @param ties where players' random choices come from
     * @param listener told of each turn
     * @return points of the first side, negative if it loses them
     */
    public int play(
            Position start,
            boolean openingRoll,
            CubeGame game,
            Side first,
            Side second,
            Dice dice,
            Dice ties,
            TurnListener listener) {
        Roll[] opening = {openingRoll ? dice.opening() : dice.next()};
        Supplier<Roll> rolls = () -> {
            Roll roll = opening[0] == null ? dice.next() : opening[0];
            opening[0] = null;
            return roll;
        };
        return play(start, game, rolls, first, second, ties, listener, Ending.NONE);
    }

    /**
     * Plays a game on from a position.
     *
     * @param start an unfinished position with the first side on roll
     * @param game the cube's side of the game; it is played to its end
     * @param rolls where rolls come from
     * @param first side on roll
     * @param second the other side
     * @param ties where players' random choices come from
     * @param listener told of each turn; the cube is as it was when the roll was thrown
     * @param ending whether to truncate the game; it is not finished then
     * @return points of the first side, negative if it loses them; 0 if the game was truncated
     */
    public int play(
            Position start,
            CubeGame game,
            Supplier<Roll> rolls,
            Side first,
            Side second,
            Dice ties,
            TurnListener listener,
            Ending ending) {
        int[] turns = {0};
        boolean[] broken = {false};
        loop.play(
                start,
                rolls,
                bound(first, game),
                bound(second, game),
                ties,
                listener,
                (planes, at, out, outAt) -> {
                    if (turns[0]++ > 0) {
                        game.played();
                    }
                    broken[0] = ending.ends(planes, at, game);
                    if (broken[0]) {
                        out[outAt] = 1;
                        return true;
                    }
                    boolean firstOnRoll = turns[0] % 2 == 1;
                    decide(planes, at, game, firstOnRoll ? first : second, firstOnRoll ? second : first);
                    // A pass: the side on roll has won. What it is worth, the cube's game knows.
                    out[outAt] = 1;
                    return game.over();
                },
                end);
        if (!game.over() && !broken[0]) {
            game.finish(result());
        }
        return game.points();
    }

    private static Player bound(Side side, CubeGame game) {
        return (planes, at, legal, ties) -> side.checkers.choose(planes, legal, ties, game);
    }

    private static void decide(int[] planes, int at, CubeGame game, Side onRoll, Side other) {
        while (!game.actions().isEmpty()) {
            if (game.actions().size() == 1) {
                game.act(CubeAction.ROLL);
            } else {
                boolean mine = game.actions().contains(CubeAction.ROLL);
                game.act((mine ? onRoll : other).cube.act(Position.ofPlanes(planes, at), game));
            }
        }
    }

    /** What the loser of the game just finished lost. */
    private GameResult result() {
        for (int i = 0; i < Outcomes.COUNT; i++) {
            if (end[i] == 1) {
                return GameResult.values()[i % GameResult.values().length];
            }
        }
        throw new IllegalStateException("the game has not finished");
    }

    /**
     * Length of the game played last.
     *
     * @return number of rolls of both sides
     */
    public int turns() {
        return loop.turns();
    }

    /**
     * Plays a match.
     *
     * @param length points that win it, at least 1
     * @param a one side
     * @param b the other side
     * @param dice gives the dice of each game by its number in the match, from 0; a die thrown first says who starts
     * @param watcher told of the games
     * @return whether a has won
     */
    public boolean playMatch(int length, Side a, Side b, IntFunction<Dice> dice, Watcher watcher) {
        MatchScore score = MatchScore.ofLength(length);
        for (int number = 0; ; number++) {
            Dice thrown = dice.apply(number);
            boolean aStarts = thrown.below(2) == 0;
            CubeGame game = new CubeGame(new MatchStakes(aStarts ? score : score.swapped()));
            watcher.begins(score, aStarts, game);
            int points = aStarts ? play(game, a, b, thrown, watcher) : -play(game, b, a, thrown, watcher);
            watcher.ended(points);
            if (score.ends(points)) {
                return points > 0;
            }
            score = score.after(points);
        }
    }
}
