package org.pipwright.engine.evaluation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleBiFunction;
import java.util.stream.IntStream;
import org.pipwright.engine.position.Position;

/** What is left of one roll's results in one column of worth, each result valued alone: sort, cut, compare. */
public final class NaiveSieve {
    private final PositionEvaluator evaluator;
    private final PositionEvaluator quick;
    private final double within;
    private final int most;

    /** A sieve that keeps results within so much of the quick one's best, in the unit of the worth, and at most so many. */
    public NaiveSieve(PositionEvaluator evaluator, PositionEvaluator quick, double within, int most) {
        this.evaluator = evaluator;
        this.quick = quick;
        this.within = within;
        this.most = most;
    }

    /** With the limits that hold for plays to choose from. */
    public static NaiveSieve ofPlays(PositionEvaluator evaluator, PositionEvaluator quick) {
        return new NaiveSieve(evaluator, quick, Sieve.WITHIN, Sieve.MAX_PLAYS);
    }

    /** With the limits that hold for replies, a point being worth so much. */
    public static NaiveSieve ofReplies(PositionEvaluator evaluator, PositionEvaluator quick, double point) {
        return new NaiveSieve(evaluator, quick, Sieve.REPLIES_WITHIN * point, Sieve.MAX_REPLIES);
    }

    /** With the limits that hold for replies to replies, a point being worth so much. */
    public static NaiveSieve ofLaterReplies(PositionEvaluator evaluator, PositionEvaluator quick, double point) {
        return new NaiveSieve(evaluator, quick, Sieve.LATER_WITHIN * point, Sieve.MAX_LATER);
    }

    /**
     * What the results that are left are worth as the evaluator judges them, by their index.
     *
     * @param parent the position before the roll
     * @param results what its plays lead to, the mover's side first
     * @param worth what a result is worth whose chances, for the mover, are known
     */
    public Map<Integer, Double> left(
            Position parent, List<Position> results, ToDoubleBiFunction<Position, Outcomes> worth) {
        List<Double> first = values(quick, parent, results, worth);
        List<Double> judged = values(evaluator, parent, results, worth);
        List<Integer> order =
                new ArrayList<>(IntStream.range(0, results.size()).boxed().toList());
        order.sort(Comparator.comparingDouble(i -> -first.get(i)));
        double best = first.get(order.get(0));
        Map<Integer, Double> left = new TreeMap<>();
        order.stream()
                .limit(most)
                .filter(i -> results.size() == 1 || first.get(i) >= best - within)
                .forEach(i -> left.put(i, judged.get(i)));
        return left;
    }

    private static List<Double> values(
            PositionEvaluator evaluator,
            Position parent,
            List<Position> results,
            ToDoubleBiFunction<Position, Outcomes> worth) {
        List<Double> values = new ArrayList<>();
        for (Position result : results) {
            float[] chances = new float[Outcomes.COUNT];
            evaluator.evaluateResults(parent.toPlanes(), 0, result.toPlanes(), 1, chances);
            values.add(worth.applyAsDouble(result, Outcomes.of(chances, 0)));
        }
        return values;
    }
}
