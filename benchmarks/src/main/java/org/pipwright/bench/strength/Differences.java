package org.pipwright.bench.strength;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * How two references of the same decisions differ: in what each play is behind the one that the first has for the best.
 *
 * @param decisions decisions of both
 * @param sameBest of these, how many have the same best play in both
 * @param loss what the first reference's best plays lose by the second, mean over the decisions, in points
 * @param all all plays that both have, the best ones apart
 * @param close those of them that the first has at most {@value #CLOSE} behind
 */
record Differences(int decisions, int sameBest, double loss, Sums all, Sums close) {
    /** Points. */
    static final double CLOSE = 0.02;

    /**
     * Sums over plays.
     *
     * @param plays how many
     * @param sum of the differences, the second's less the first's
     * @param squares sum of their squares
     * @param errors sum of the squares of their standard errors
     */
    record Sums(int plays, double sum, double squares, double errors) {
        static final Sums NONE = new Sums(0, 0, 0, 0);

        Sums plus(double difference, double error) {
            return new Sums(plays + 1, sum + difference, squares + difference * difference, errors + error * error);
        }

        double mean() {
            return sum / plays;
        }

        /** Root of the mean square. */
        double size() {
            return Math.sqrt(squares / plays);
        }

        /** What it would be if there were only errors. */
        double expected() {
            return Math.sqrt(errors / plays);
        }

        /** What is left: the size of true differences. */
        double beyondErrors() {
            return Math.sqrt(Math.max(0, squares - errors) / plays);
        }
    }

    static Differences of(List<Reference> one, List<Reference> other) {
        Map<Integer, Reference> byId = new HashMap<>();
        other.forEach(reference -> byId.put(reference.id(), reference));
        int decisions = 0;
        int sameBest = 0;
        double loss = 0;
        Sums all = Sums.NONE;
        Sums close = Sums.NONE;
        for (Reference first : one) {
            Reference second = byId.get(first.id());
            Map<String, Reference.Rolled> plays = second == null ? Map.of() : byPlay(second);
            Reference.Rolled best = plays.get(first.plays().get(0).play());
            if (best == null) {
                continue;
            }
            decisions++;
            sameBest += best.behind() == 0 ? 1 : 0;
            loss -= best.behind();
            for (Reference.Rolled rolled :
                    first.plays().subList(1, first.plays().size())) {
                Reference.Rolled twin = plays.get(rolled.play());
                if (twin != null) {
                    double difference = twin.behind() - best.behind() - rolled.behind();
                    double error = Math.sqrt(squares(rolled.error(), twin.error(), best.error()));
                    all = all.plus(difference, error);
                    close = rolled.behind() >= -CLOSE ? close.plus(difference, error) : close;
                }
            }
        }
        return new Differences(decisions, sameBest, loss / decisions, all, close);
    }

    private static double squares(double a, double b, double c) {
        return a * a + b * b + c * c;
    }

    private static Map<String, Reference.Rolled> byPlay(Reference reference) {
        Map<String, Reference.Rolled> plays = new HashMap<>();
        reference.plays().forEach(rolled -> plays.put(rolled.play(), rolled));
        return plays;
    }
}
