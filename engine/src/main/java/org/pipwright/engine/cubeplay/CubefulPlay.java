package org.pipwright.engine.cubeplay;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.ranking.Grade;

/**
 * One play among others, by its worth with the cube.
 *
 * @param play the play
 * @param outcomes the six chances after it, for the side that plays, with both sides playing for cubeless points
 * @param lookahead future rolls averaged over for these chances
 * @param value what it leaves the side that plays: points per unit of the cube, or the chance to win the match
 * @param depth how deeply the value was looked at; the error is in its unit
 * @param exact whether the value comes from an exact table
 * @param cost value less that of the best play; 0 for the best, negative for all worse ones
 * @param points the cost in points per unit of the cube; in a match the cost divided by half of the difference between
 *     winning and losing a single game at the present cube (common practice, no source)
 */
public record CubefulPlay(
        Play play,
        Outcomes outcomes,
        int lookahead,
        double value,
        Depth depth,
        boolean exact,
        double cost,
        double points) {
    /** Plays that were looked at more deeply come first: a shallow value is no reason to prefer a play to them. */
    private static final Comparator<CubefulPlay> ORDER =
            Comparator.comparing(CubefulPlay::depth, Depth.DEEPEST_FIRST).thenComparingDouble(play -> -play.value());

    /** A play before it has a place among others. */
    CubefulPlay(Play play, Outcomes outcomes, int lookahead, double value, boolean exact) {
        this(play, outcomes, lookahead, value, new Depth(lookahead), exact, 0, 0);
    }

    /**
     * Orders plays: those played out before the others, then by lookahead, then by value, equals as given.
     *
     * @param plays the plays in any order; their costs are worked out anew
     * @param point what a point is worth in the unit of the values, as {@link
     *     org.pipwright.engine.cube.CubeTerms#point} tells
     * @return the ranking, best first
     */
    public static List<CubefulPlay> inOrder(List<CubefulPlay> plays, double point) {
        List<CubefulPlay> sorted = new ArrayList<>(plays);
        sorted.sort(ORDER);
        double best = sorted.get(0).value;
        // A shallow value may lie above the best deep one; the play still costs nothing less than that.
        sorted.replaceAll(play -> play.costing(Math.min(0, play.value - best), point));
        return sorted;
    }

    private CubefulPlay costing(double less, double point) {
        return new CubefulPlay(play, outcomes, lookahead, value, depth, exact, less, less / point);
    }

    /**
     * The same play, valued by games.
     *
     * @param mean the value that games gave, in the same unit
     * @param games how many they were, and its standard error
     * @return the play, to be ordered anew
     */
    public CubefulPlay playedOut(double mean, Depth games) {
        return new CubefulPlay(play, outcomes, lookahead, mean, games, exact, cost, points);
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
