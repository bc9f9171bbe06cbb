package org.pipwright.training.cuda;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.pipwright.engine.evaluation.FinishedGames;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/** Lookahead by one roll in plain loops: the slow twin of the card's. */
final class PlainLookahead {
    private final PlainNet deep;
    private final PlainNet quick;
    private final PlayGenerator plays = new PlayGenerator();

    PlainLookahead(PlainNet deep, PlainNet quick) {
        this.deep = deep;
        this.quick = quick;
    }

    /** Chances after a result for the side that played. */
    private static double[] after(PlainNet net, int[] results, int at) {
        float[] finished = new float[6];
        double[] chances = new double[6];
        if (FinishedGames.write(results, at, finished, 0)) {
            for (int k = 0; k < 6; k++) {
                chances[k] = finished[k];
            }
            return chances;
        }
        int[] swapped = new int[8];
        Planes.copySwapped(results, at, swapped, 0);
        double[] theirs = net.chances(swapped, 0);
        for (int k = 0; k < 6; k++) {
            chances[k] = theirs[(k + 3) % 6];
        }
        return chances;
    }

    /** The results of a roll that the quick network keeps, the best first, as indices. */
    List<Integer> keep(int[] results, int count, double margin, int most) {
        double[] equity = new double[count];
        for (int i = 0; i < count; i++) {
            equity[i] = PlainNet.equity(after(quick, results, 8 * i));
        }
        return pruned(equity, margin, most);
    }

    /** Those within a margin of the best, the best first, so many at most; of equals the first. */
    static List<Integer> pruned(double[] equity, double margin, int most) {
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < equity.length; i++) {
            order.add(i);
        }
        order.sort(Comparator.comparingDouble((Integer i) -> -equity[i]));
        double best = equity[order.get(0)];
        order.removeIf(i -> equity[i] < best - margin);
        return order.subList(0, Math.min(most, order.size()));
    }

    /** The mean over the 21 rolls of the best reply's chances. */
    double[] expected(int[] planes, int at, double margin, int most) {
        double[] expected = new double[6];
        for (Roll roll : Roll.all()) {
            int count = plays.generate(planes, at, roll.high(), roll.low());
            double[] best = null;
            for (int i : keep(plays.results(), count, margin, most)) {
                double[] chances = after(deep, plays.results(), 8 * i);
                if (best == null || PlainNet.equity(chances) > PlainNet.equity(best)) {
                    best = chances;
                }
            }
            for (int k = 0; k < 6; k++) {
                expected[k] += (roll.isDouble() ? 1 : 2) / 36.0 * best[k];
            }
        }
        return expected;
    }
}
