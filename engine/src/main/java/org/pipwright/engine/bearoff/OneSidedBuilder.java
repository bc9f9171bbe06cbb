package org.pipwright.engine.bearoff;

import java.util.Arrays;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/**
 * Computes the distributions of one side's rolls to bear off all of its checkers, and apart from it to bear off its first
 * one, by dynamic programming over the pip count, the opponent being out of the way.
 *
 * <p>The play assumed minimises the mean number of rolls of the distribution in question: for the first, to bear off all
 * checkers; for the second, to bear off one. Of plays with the same mean the generator's first is taken.
 */
final class OneSidedBuilder {
    /** Means that differ by less are taken as equal: well above rounding, well below any real difference. */
    private static final double TIE = 1e-12;

    /** Arrangements a thread takes at a time: enough to make taking them cheap. */
    private static final int BATCH = 64;

    private final SideIndex index;
    private final double[] meanAll;
    private final double[] meanFirst;
    private final double[][] all;
    private final double[][] first;

    OneSidedBuilder(SideIndex index) {
        this.index = index;
        meanAll = new double[index.size()];
        meanFirst = new double[index.size()];
        all = new double[index.size()][];
        first = new double[index.size()][];
    }

    void build(int threads, TableProgress progress) {
        new PipLevels(index, BATCH).run(threads, Worker::new, progress);
    }

    /** Survival chances of the rolls to bear off all checkers. */
    double[] all(int arrangement) {
        return all[arrangement];
    }

    /** Survival chances of the rolls to bear off the first checker, none having been borne off. */
    double[] first(int arrangement) {
        return first[arrangement];
    }

    /** Computes arrangements on one thread. */
    private final class Worker implements PipLevels.Worker {
        private final PlayGenerator generator = new PlayGenerator();
        private final int[] planes = new int[Planes.STRIDE];
        private final double[] sumAll = new double[256];
        private final double[] sumFirst = new double[256];
        private int bestAll;
        private int bestFirst;

        @Override
        public void compute(int arrangement) {
            if (arrangement == 0) {
                all[0] = new double[0];
                first[0] = new double[0];
                return;
            }
            Arrays.fill(sumAll, 0);
            Arrays.fill(sumFirst, 0);
            sumAll[0] = 1;
            sumFirst[0] = 1;
            index.write(arrangement, planes, 0);
            for (Roll roll : Roll.all()) {
                choose(roll);
                add(all[bestAll], roll.probability(), sumAll);
                if (bestFirst >= 0) {
                    add(first[bestFirst], roll.probability(), sumFirst);
                }
            }
            all[arrangement] = cut(sumAll);
            first[arrangement] = cut(sumFirst);
            meanAll[arrangement] = Arrays.stream(all[arrangement]).sum();
            meanFirst[arrangement] = Arrays.stream(first[arrangement]).sum();
        }

        /** Finds the best results of a roll; bestFirst is -1 if a checker can be borne off. */
        private void choose(Roll roll) {
            int size = generator.generate(planes, 0, roll.high(), roll.low());
            int[] results = generator.results();
            double leastAll = Double.POSITIVE_INFINITY;
            double leastFirst = Double.POSITIVE_INFINITY;
            for (int i = 0; i < size; i++) {
                int at = i * Planes.STRIDE;
                int result = index.of(results, at);
                if (meanAll[result] < leastAll - TIE) {
                    leastAll = meanAll[result];
                    bestAll = result;
                }
                boolean off = (Planes.occupied(results, at) & 1) != 0;
                double rolls = off ? 0 : meanFirst[result];
                if (rolls < leastFirst - TIE) {
                    leastFirst = rolls;
                    bestFirst = off ? -1 : result;
                }
            }
        }

        /** Adds a distribution that starts one roll later, weighed. */
        private void add(double[] survival, double weight, double[] sum) {
            for (int k = 0; k < survival.length; k++) {
                sum[k + 1] += weight * survival[k];
            }
        }

        private double[] cut(double[] sum) {
            int length = 1;
            while (sum[length] > Survival.NEGLIGIBLE) {
                length++;
            }
            return Arrays.copyOf(sum, length);
        }
    }
}
