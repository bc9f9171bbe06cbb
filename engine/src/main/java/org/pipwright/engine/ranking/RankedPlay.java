package org.pipwright.engine.ranking;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.Play;

/**
 * One play among others. The position it leads to is {@link Play#next()}.
 *
 * @param play the play
 * @param outcomes the six chances after it, for the side that plays
 * @param equity points per game for the side that plays, with the cube out of play
 * @param cost equity less that of the best play of the ranking: 0 for the best, negative for all worse ones
 * @param depth how deeply the play was evaluated
 */
public record RankedPlay(Play play, Outcomes outcomes, double equity, double cost, Depth depth) {
    /** Plays that were looked at more deeply come first: a shallow equity is no reason to prefer a play to them. */
    private static final Comparator<Evaluated> ORDER = Comparator.comparing(Evaluated::depth, Depth.DEEPEST_FIRST)
            .thenComparingDouble(evaluated -> -evaluated.equity());

    /**
     * A play and its evaluation, before it has a place among others.
     *
     * @param play the play
     * @param outcomes the six chances after it, for the side that plays
     * @param equity points per game for the side that plays; what comes of games may differ a little from that of the
     *     chances, which are kept from being negative
     * @param depth how deeply it was evaluated
     */
    public record Evaluated(Play play, Outcomes outcomes, double equity, Depth depth) {
        /**
         * A play whose equity is that of its chances.
         *
         * @param play the play
         * @param outcomes the six chances after it, for the side that plays
         * @param depth how deeply it was evaluated
         */
        public Evaluated(Play play, Outcomes outcomes, Depth depth) {
            this(play, outcomes, outcomes.equity(), depth);
        }
    }

    /**
     * Orders plays: those played out before the others, then by lookahead, then by equity, equals as given.
     *
     * @param evaluated the plays in any order
     * @return the ranking, best first
     */
    public static List<RankedPlay> inOrder(List<Evaluated> evaluated) {
        List<Evaluated> sorted = new ArrayList<>(evaluated);
        sorted.sort(ORDER);
        List<RankedPlay> ranking = new ArrayList<>(sorted.size());
        for (Evaluated each : sorted) {
            double equity = each.equity();
            double best = ranking.isEmpty() ? equity : ranking.get(0).equity();
            // A shallow equity may lie above the best deep one; the play still costs nothing less than that.
            ranking.add(new RankedPlay(each.play(), each.outcomes(), equity, Math.min(0, equity - best), each.depth()));
        }
        return ranking;
    }

    /**
     * The cost in a word.
     *
     * @return the grade of {@link #cost()}
     */
    public Grade grade() {
        return Grade.ofCost(cost);
    }
}
