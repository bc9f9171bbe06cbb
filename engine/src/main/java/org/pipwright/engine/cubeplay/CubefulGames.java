package org.pipwright.engine.cubeplay;

import java.util.function.IntFunction;
import java.util.function.Supplier;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.match.TurnListener;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;
import org.pipwright.engine.score.MatchScore;

/**
 * Plays games with the cube, on the one game loop: before each roll the cube is asked about, and a pass ends the game.
 * Serves one thread.
 */
public final class CubefulGames {
    private final GameLoop loop = new GameLoop();
    private final float[] end = new float[Outcomes.COUNT];

    /**
     * A side.
     *
     * @param checkers who moves its checkers
     * @param cube who decides about its cube
     */
    public record Side(Player checkers, CubePlayer cube) {}

    /** Creates one. */
    public CubefulGames() {}

    /**
     * Plays a game from the start; the first player has won the opening roll, which the dice give.
     *
     * @param stakes what is played for, seen from the first player
     * @param first side on roll
     * @param second the other side
     * @param dice where rolls come from
     * @return points of the first side, negative if it loses them
     */
    public int play(Stakes stakes, Side first, Side second, Dice dice) {
        Roll[] opening = {dice.opening()};
        Supplier<Roll> rolls = () -> {
            Roll roll = opening[0] == null ? dice.next() : opening[0];
            opening[0] = null;
            return roll;
        };
        return play(Position.start(), new CubeGame(stakes), rolls, first, second, dice);
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
     * @return points of the first side, negative if it loses them
     */
    public int play(Position start, CubeGame game, Supplier<Roll> rolls, Side first, Side second, Dice ties) {
        int[] turns = {0};
        loop.play(
                start,
                rolls,
                first.checkers,
                second.checkers,
                ties,
                TurnListener.NONE,
                (planes, at, out, outAt) -> {
                    if (turns[0]++ > 0) {
                        game.played();
                    }
                    boolean firstOnRoll = turns[0] % 2 == 1;
                    decide(
                            Position.ofPlanes(planes, at),
                            game,
                            firstOnRoll ? first : second,
                            firstOnRoll ? second : first);
                    // A pass: the side on roll has won. What it is worth, the cube's game knows.
                    out[outAt] = 1;
                    return game.over();
                },
                end);
        if (!game.over()) {
            game.finish(result());
        }
        return game.points();
    }

    private static void decide(Position position, CubeGame game, Side onRoll, Side other) {
        while (!game.actions().isEmpty()) {
            if (game.actions().size() == 1) {
                game.act(CubeAction.ROLL);
            } else {
                boolean mine = game.actions().contains(CubeAction.ROLL);
                game.act((mine ? onRoll : other).cube.act(position, game));
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
     * Plays a match.
     *
     * @param length points that win it, at least 1
     * @param a one side
     * @param b the other side
     * @param dice gives the dice of each game by its number in the match, from 0; a die thrown first says who starts
     * @return whether a has won
     */
    public boolean playMatch(int length, Side a, Side b, IntFunction<Dice> dice) {
        MatchScore score = MatchScore.ofLength(length);
        for (int number = 0; ; number++) {
            Dice thrown = dice.apply(number);
            boolean aStarts = thrown.below(2) == 0;
            int points = aStarts
                    ? play(new MatchStakes(score), a, b, thrown)
                    : -play(new MatchStakes(score.swapped()), b, a, thrown);
            if (score.ends(points)) {
                return points > 0;
            }
            score = score.after(points);
        }
    }
}
