package org.pipwright.engine.reduced;

import java.util.function.Supplier;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.parallel.Crew;

/**
 * What the greedy policy of an evaluator is worth against the best player of a reduced game, without sampling: the policy
 * takes the play with the highest cubeless equity, the first of equals. Games start with a roll that is no double; each
 * side starts equally often. Points lost are the sum, over the positions its own games reach, of how often they are
 * reached times the exact equity that the chosen play gives away there (the performance difference lemma: Kakade and
 * Langford, ICML 2002).
 *
 * @param equityStarting exact points per game of the policy in games that it starts
 * @param equitySecond exact points per game of the policy in games that the best player starts
 * @param lostPerGame points per game less than the best player would have; at least 0 but for rounding
 * @param decisionsPerGame rolls per game at which the policy had plays that differ in their result
 * @param visited errors of the evaluator's equities before the roll, weighted by how often the policy's games against the
 *     best player reach a position, whoever is on roll
 * @param everywhere errors over all unfinished positions, equally weighted
 */
public record PolicyValue(
        double equityStarting,
        double equitySecond,
        double lostPerGame,
        double decisionsPerGame,
        ErrorSummary visited,
        ErrorSummary everywhere) {

    /** Games not followed to their end: their share of the loss is at most six times this, 6e-10 points. */
    private static final double LEFT = 1e-10;

    /**
     * Computes it. Takes about 120 bytes a cell, the table included: 15 MB with two checkers, 1.3 GB with
     * three.
     *
     * @param table the solved game
     * @param evaluators gives each thread an evaluator of its own
     * @param threads threads to use, at least 1
     * @return the policy's value
     */
    public static PolicyValue of(ReducedTable table, Supplier<? extends PositionEvaluator> evaluators, int threads) {
        NetJudgement net = NetJudgement.of(table.game(), evaluators, threads);
        Visits[] visits = new Visits[2];
        try (Crew<Integer> crew = new Crew<>(Math.min(2, threads), () -> 0)) {
            crew.run(
                    2,
                    (worker, starter) ->
                            visits[starter] = Visits.of(table.game(), net.choices(), table.choices(), starter, LEFT));
        }
        return new PolicyCount(table, net).of(visits[0], visits[1]);
    }

    /**
     * Equity lost per decision.
     *
     * @return points, over the decisions of {@link #decisionsPerGame}
     */
    public double lostPerDecision() {
        return lostPerGame / decisionsPerGame;
    }
}
