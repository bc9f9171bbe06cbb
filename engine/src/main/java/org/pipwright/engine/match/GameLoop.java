package org.pipwright.engine.match;

import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;

/**
 * Plays games: the one loop behind self-play, duels and rollouts. Keeps buffers, so an instance serves one thread.
 */
public final class GameLoop {
    private final PlayGenerator generator = new PlayGenerator();
    private final int[] planes = new int[Planes.STRIDE];
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
        start.copyTo(planes, 0);
        Player onRoll = first;
        Roll roll = firstRoll == null ? dice.next() : firstRoll;
        for (turns = 1; ; turns++) {
            generator.generate(planes, 0, roll.high(), roll.low());
            int chosen = onRoll.choose(planes, 0, generator, ties);
            listener.turn(planes, roll, generator, chosen);
            Planes.copySwapped(generator.results(), chosen * Planes.STRIDE, planes, 0);
            if ((Planes.occupied(planes, Planes.SIDE) & Planes.ON_BOARD) == 0) {
                int points = GameResult.of(planes, 0).points();
                // By the turn, not by the player: both may be the same object.
                return turns % 2 == 1 ? points : -points;
            }
            onRoll = onRoll == first ? second : first;
            roll = dice.next();
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
