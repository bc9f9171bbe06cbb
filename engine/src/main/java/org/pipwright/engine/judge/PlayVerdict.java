package org.pipwright.engine.judge;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.ranking.Grade;

/**
 * A judge's verdict on one play among others. The position it leads to is {@link Play#next()}.
 *
 * @param play the play
 * @param value what it leaves the side that plays: points per game; with a cube points per unit of it, or the chance to
 *     win the match
 * @param outcomes the six chances after it, for the side that plays
 * @param depth how deeply the value was looked at; its error is in the unit of the value
 * @param lookahead future rolls averaged over for the chances, which games with a cube leave as they were
 * @param basis what the value rests on
 * @param cost value less that of the best play: 0 for the best, negative for all worse ones
 * @param points the cost in points: the same but in a match, where it is the cost divided by half of the difference
 *     between winning and losing a single game at the present cube (common practice, no source)
 */
@PublicApi
public record PlayVerdict(
        Play play, double value, Outcomes outcomes, Depth depth, int lookahead, Basis basis, double cost, double points)
        implements Serializable {
    /**
     * Plays that were searched more deeply come first: a shallower value is no reason to prefer another play to them.
     */
    private static final Comparator<PlayVerdict> ORDER =
            Comparator.comparing(PlayVerdict::depth, Depth.DEEPEST_FIRST).thenComparingDouble(play -> -play.value());

    /** A play before it has a place among others. */
    PlayVerdict(Play play, double value, Outcomes outcomes, Depth depth, Basis basis) {
        this(play, value, outcomes, depth, depth.lookahead(), basis, 0, 0);
    }

    /** The same play, valued by games with a cube, which leave the chances as they are. */
    PlayVerdict playedOut(double mean, Depth games) {
        return new PlayVerdict(play, mean, outcomes, games, lookahead, Basis.ESTIMATED, 0, 0);
    }

    /** The same play, valued by games without a cube. */
    PlayVerdict playedOut(double mean, Outcomes chances, Depth games) {
        return new PlayVerdict(play, mean, chances, games, Basis.ESTIMATED);
    }

    /**
     * Orders plays: those rolled out before the others, then by lookahead, then by value; equal ones keep their order.
     *
     * @param plays the plays in any order, at least one; their costs are worked out anew
     * @param point what a point is worth in the unit of the values; 1 without a match
     * @return the ranking, best first
     */
    public static List<PlayVerdict> inOrder(List<PlayVerdict> plays, double point) {
        List<PlayVerdict> sorted = new ArrayList<>(plays);
        sorted.sort(ORDER);
        return costed(sorted, point);
    }

    /**
     * Works out anew what plays cost, in the order they have.
     *
     * @param plays the plays, the best first; at least one
     * @param point what a point is worth in the unit of the values; 1 without a match
     * @return the same plays, each with its cost against the first
     */
    public static List<PlayVerdict> costed(List<PlayVerdict> plays, double point) {
        double best = plays.get(0).value;
        // A shallow value may lie above the best deep one; the play still costs nothing less than that.
        return plays.stream()
                .map(play -> play.costing(Math.min(0, play.value - best), point))
                .toList();
    }

    private PlayVerdict costing(double less, double point) {
        return new PlayVerdict(play, value, outcomes, depth, lookahead, basis, less, less / point);
    }

    /**
     * Points per game after the play, with the cube left out.
     *
     * @return the equity of the chances
     */
    public double equity() {
        return outcomes.equity();
    }

    /**
     * Standard error of the value because of the dice of games.
     *
     * @return in the unit of the value; 0 without games
     */
    public double error() {
        return depth.error();
    }

    /**
     * The cost in a word.
     *
     * @return the grade of {@link #points()}
     */
    public Grade grade() {
        return Grade.ofCost(points);
    }
}
