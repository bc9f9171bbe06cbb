package org.pipwright.engine.review;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.record.GameRecord;

/**
 * A record with every turn judged.
 *
 * @param record the record
 * @param settings how deeply it was looked at
 * @param turns all turns, game by game
 */
public record Review(GameRecord record, ReviewSettings settings, List<ReviewedTurn> turns) {
    /**
     * Keeps the turns.
     *
     * @param record the record
     * @param settings how deeply it was looked at
     * @param turns all turns
     */
    public Review {
        turns = List.copyOf(turns);
    }

    /**
     * The turns of a game.
     *
     * @param game its number, from 0
     * @return its turns in order
     */
    public List<ReviewedTurn> game(int game) {
        return turns.stream().filter(turn -> turn.moment().game() == game).collect(Collectors.toList());
    }

    /**
     * How a side did.
     *
     * @param side 0 or 1
     * @return its account over all games
     */
    public SideAccount account(int side) {
        return SideAccount.of(side, turns);
    }

    /**
     * Where the record turned: the luckiest and unluckiest rolls and the costliest decisions.
     *
     * @param some turns of it
     * @param most how many at most
     * @return those with the largest change of what counts in the end, largest first; changes of less than a thousandth are
     *     left out
     */
    public static List<TurningPoint> turningPoints(List<ReviewedTurn> some, int most) {
        List<TurningPoint> all = new ArrayList<>();
        some.forEach(turn -> all.addAll(TurningPoint.of(turn)));
        return all.stream()
                .filter(point -> Math.abs(point.change()) >= TurningPoint.LEAST)
                .sorted(Comparator.comparingDouble(point -> -Math.abs(point.change())))
                .limit(most)
                .collect(Collectors.toList());
    }
}
