package org.pipwright.engine.drill;

import java.util.List;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * Which play is best?
 *
 * @param game number of the game it was taken from
 * @param position the position before the play
 * @param roll the roll
 * @param ranking every legal play, best first; the best five at least and the weaker player's with the full lookahead
 * @param weak the weaker player's play
 */
public record PlayExercise(long game, Position position, Roll roll, List<PlayVerdict> ranking, PlayVerdict weak)
        implements Exercise {
    /**
     * Copies the ranking.
     *
     * @param game number of the game
     * @param position the position before the play
     * @param roll the roll
     * @param ranking every legal play, at least two
     * @param weak one of them
     */
    public PlayExercise {
        ranking = List.copyOf(ranking);
        if (ranking.size() < 2 || !ranking.contains(weak)) {
            throw new IllegalArgumentException("a question needs two plays, one of them the weaker player's");
        }
    }

    /**
     * The answer.
     *
     * @return the best play
     */
    public PlayVerdict best() {
        return ranking.get(0);
    }

    @Override
    public double cost() {
        return weak.cost();
    }

    @Override
    public double margin() {
        return -ranking.get(1).cost();
    }
}
