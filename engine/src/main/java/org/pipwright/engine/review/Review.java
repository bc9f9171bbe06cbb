package org.pipwright.engine.review;

import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
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
    private static final double MIN = 0.001;

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
     * The rolls that turned the record.
     *
     * @param most how many at most
     * @return those with the most luck, good or bad, largest first
     */
    public List<TurningPoint> turningRolls(int most) {
        return largest(most, point -> point.decision().isEmpty());
    }

    /**
     * The decisions that turned the record.
     *
     * @param most how many at most
     * @return the costliest, costliest first
     */
    public List<TurningPoint> turningDecisions(int most) {
        return largest(most, point -> point.decision().isPresent());
    }

    /** Changes of less than a thousandth turn nothing. */
    private List<TurningPoint> largest(int most, Predicate<TurningPoint> which) {
        return turns.stream()
                .flatMap(turn -> TurningPoint.of(turn).stream())
                .filter(which.and(point -> Math.abs(point.change()) >= MIN))
                .sorted(Comparator.comparingDouble(point -> -Math.abs(point.change())))
                .limit(most)
                .collect(Collectors.toList());
    }
}
