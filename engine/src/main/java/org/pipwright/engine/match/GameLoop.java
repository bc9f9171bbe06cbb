package org.pipwright.engine.match;

import java.util.function.Supplier;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.FinishedGames;
import org.pipwright.engine.evaluation.Horizon;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;

/**
 * Plays games: the one loop behind self-play, duels and rollouts. Keeps buffers, so an instance serves one thread.
 */
public final class GameLoop {
    private final PlayGenerator generator = new PlayGenerator();
    private final int[] planes = new int[Planes.STRIDE];
    private final float[] outcome = new float[Outcomes.COUNT];
    private int turns;

    /** Creates one. */
    public GameLoop() {}

    /**
     * Plays a game to its end.
     *
     * @param start the position, unfinished, with the first player on roll
     * @param firstRoll roll to begin with, or null to throw it
     * @param first player on roll
     * @param second the other player
     * @param dice where rolls come from
     * @param ties where players' random choices come from, apart from the dice so that these stay the same
     * @param listener told of each turn
     * @return points of the first player: 1, 2 or 3, negative if the second won
     */
    public int play(
            Position start, Roll firstRoll, Player first, Player second, Dice dice, Dice ties, TurnListener listener) {
        Roll[] given = {firstRoll};
        Supplier<Roll> rolls = () -> {
            Roll roll = given[0] == null ? dice.next() : given[0];
            given[0] = null;
            return roll;
        };
        play(start, rolls, first, second, ties, listener, Horizon.NONE, outcome);
        return Math.round(Chances.equity(outcome, 0));
    }

    /**
     * Plays a game until it is finished or its chances are known.
     *
     * @param start the position with the first player on roll; it may be finished
     * @param rolls where rolls come from
     * @param first player on roll
     * @param second the other player
     * @param ties where players' random choices come from
     * @param listener told of each turn
     * @param horizon asked before each roll, the first one included
     * @param out where to write six chances of the first player: certainty for a finished game, else what the horizon says
     */
    public void play(
            Position start,
            Supplier<Roll> rolls,
            Player first,
            Player second,
            Dice ties,
            TurnListener listener,
            Horizon horizon,
            float[] out) {
        start.copyTo(planes, 0);
        turns = 0;
        while (!FinishedGames.write(planes, 0, out, 0) && !horizon.write(planes, 0, out, 0)) {
            Roll roll = rolls.get();
            generator.generate(planes, 0, roll.high(), roll.low());
            int chosen = (turns % 2 == 0 ? first : second).choose(planes, 0, generator, ties);
            listener.turn(planes, roll, generator, chosen);
            Planes.copySwapped(generator.results(), chosen * Planes.STRIDE, planes, 0);
            turns++;
        }
        if (turns % 2 != 0) {
            Chances.swap(out, 0);
        }
    }

    /**
     * Length of the game played last.
     *
     * @return number of rolls of both sides
     */
    public int turns() {
        return turns;
    }
}
