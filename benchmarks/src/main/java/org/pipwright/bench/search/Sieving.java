package org.pipwright.bench.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * What is lost if a quick net drops plays before a deep one judges the rest, against judging all, with one pair of limits:
 * within how many points of the quick net's best a play is kept, and how many are kept at most. A second look, if there is
 * one, judges those dropped plays too that the quick net puts above the best as judged.
 */
final class Sieving {
    private final float within;
    private final int most;
    private final boolean secondLook;
    private long decisions;
    private long plays;
    private long judged;
    private long different;
    private double loss;
    private double worst;

    Sieving(float within, int most, boolean secondLook) {
        this.within = within;
        this.most = most;
        this.secondLook = secondLook;
    }

    /** Pairs of limits, from narrow to wide. */
    static List<Sieving> all() {
        List<Sieving> all = new ArrayList<>();
        for (float within : new float[] {0.04f, 0.06f, 0.08f, 0.10f, 0.12f, 0.16f}) {
            for (int most : new int[] {3, 4, 5, 6, 8, 10}) {
                all.add(new Sieving(within, most, false));
            }
        }
        for (float within : new float[] {0.04f, 0.08f, 0.12f}) {
            all.add(new Sieving(within, 6, true));
        }
        return all;
    }

    /** Takes in one decision: points of each play as the quick and the deep net see them, at least two plays. */
    void add(float[] quick, float[] deep) {
        List<Integer> order =
                new ArrayList<>(IntStream.range(0, quick.length).boxed().toList());
        order.sort(Comparator.comparingDouble(i -> -quick[i]));
        double least = quick[order.get(0)] - within;
        double best = Double.NEGATIVE_INFINITY;
        int kept = 0;
        while (kept < Math.min(most, order.size()) && (kept == 0 || quick[order.get(kept)] >= least)) {
            best = Math.max(best, deep[order.get(kept++)]);
        }
        double first = best;
        while (secondLook && kept < order.size() && quick[order.get(kept)] > first) {
            best = Math.max(best, deep[order.get(kept++)]);
        }
        double highest =
                IntStream.range(0, deep.length).mapToDouble(i -> deep[i]).max().orElseThrow();
        decisions++;
        plays += quick.length;
        judged += kept;
        different += best < highest ? 1 : 0;
        loss += highest - best;
        worst = Math.max(worst, highest - best);
    }

    /** Takes in what another with the same limits has counted. */
    void add(Sieving other) {
        decisions += other.decisions;
        plays += other.plays;
        judged += other.judged;
        different += other.different;
        loss += other.loss;
        worst = Math.max(worst, other.worst);
    }

    long decisions() {
        return decisions;
    }

    /** Points lost a decision. */
    double loss() {
        return loss / decisions;
    }

    /** Plays judged a decision. */
    double judged() {
        return (double) judged / decisions;
    }

    /** Plays a decision. */
    double plays() {
        return (double) plays / decisions;
    }

    static String heading() {
        return "| within | at most | second look | judged | another play | loss a decision | most |\n"
                + "| ---: | ---: | --- | ---: | ---: | ---: | ---: |";
    }

    String row() {
        return String.format(
                Locale.ROOT,
                "| %.2f | %d | %s | %.2f | %.3f %% | %.6f | %.3f |",
                within,
                most,
                secondLook ? "yes" : "",
                judged(),
                100.0 * different / decisions,
                loss(),
                worst);
    }
}
