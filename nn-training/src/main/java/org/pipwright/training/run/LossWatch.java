package org.pipwright.training.run;

import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.network.InvalidModelException;

/**
 * Tells when the loss of a network has run away. Losses are judged over blocks of games, since those of a few games scatter
 * widely.
 */
final class LossWatch {
    private static final int BLOCK = 256;

    /** Blocks before a rise of the loss can count as divergence: it falls fast at first, and not steadily. */
    private static final int SETTLING = 40;

    /** Twice the loss of a network that holds all outcomes equally likely. */
    private static final double MAX = 2 * Math.log(Outcomes.COUNT);

    private double usual = Double.NaN;
    private int blocks;
    private double sum;
    private long games;

    /**
     * Notes the loss of a round.
     *
     * @param loss mean cross-entropy in nats
     * @param played games of the round
     * @throws InvalidModelException if training has diverged
     */
    void add(double loss, int played) {
        if (!Double.isFinite(loss)) {
            throw new InvalidModelException("the loss is " + loss);
        }
        sum += loss * played;
        games += played;
        if (games >= BLOCK) {
            judge(sum / games);
            sum = 0;
            games = 0;
        }
    }

    private void judge(double loss) {
        if (loss > MAX || blocks >= SETTLING && loss > 1.5 * usual + 0.2) {
            throw new InvalidModelException("the loss has risen to " + loss);
        }
        usual = blocks == 0 ? loss : 0.9 * usual + 0.1 * loss;
        blocks++;
    }
}
