package org.pipwright.training.run;

import org.pipwright.engine.roll.Dice;
import org.pipwright.training.learner.Learner;
import org.pipwright.training.selfplay.Samples;

/** Fits a learner to all samples of a round, each time in random order, in batches of about the wished size. */
final class Batches {
    private Batches() {}

    /**
     * Fits.
     *
     * @param passes times each sample is used, at least 1
     * @return mean loss of the first pass in nats, or 0 if there are no samples
     */
    static double fit(Learner learner, Samples samples, int batch, int passes, double rate, Dice shuffle) {
        double loss = pass(learner, samples, batch, rate, shuffle);
        for (int again = 1; again < passes; again++) {
            pass(learner, samples, batch, rate, shuffle);
        }
        return loss;
    }

    private static double pass(Learner learner, Samples samples, int batch, double rate, Dice shuffle) {
        int size = samples.size();
        if (size == 0) {
            return 0;
        }
        int[] order = shuffled(size, shuffle);
        int batches = Math.max(1, Math.round((float) size / batch));
        double loss = 0;
        for (int b = 0; b < batches; b++) {
            int from = (int) ((long) size * b / batches);
            int to = (int) ((long) size * (b + 1) / batches);
            loss += learner.fit(samples, order, from, to, rate) * (to - from);
        }
        return loss / size;
    }

    /** Fisher and Yates. */
    private static int[] shuffled(int size, Dice dice) {
        int[] order = new int[size];
        for (int i = 0; i < size; i++) {
            int j = dice.below(i + 1);
            order[i] = order[j];
            order[j] = i;
        }
        return order;
    }
}
