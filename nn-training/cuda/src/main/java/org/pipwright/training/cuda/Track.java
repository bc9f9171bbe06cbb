package org.pipwright.training.cuda;

import org.pipwright.engine.evaluation.Chances;

/**
 * The latest turns of one game and the targets they give. Of each turn: the position, the network's own chances V, the
 * chances E by lookahead, and whether the play made was another than the best, so that what came after says nothing of it.
 *
 * <p>The target of a turn is V + D + lambda D' + lambda^2 D'' + ..., where D = E - V is the turn's correction, D' that of
 * the next turn seen from this side, and so on: TD(lambda) (Sutton, Learning to predict by the methods of temporal
 * differences, Machine Learning 3 (1988), 9-44) with the mean over all rolls in place of the roll thrown.
 */
final class Track {
    /** Turns kept before the older ones give their targets. */
    static final int LENGTH = 40;

    /** Turns that stay, so that the others have had enough that came after them. */
    private static final int STAY = 16;

    private final int[] planes = new int[8 * LENGTH];
    private final float[] values = new float[6 * LENGTH];
    private final float[] expected = new float[6 * LENGTH];
    private final boolean[] strayed = new boolean[LENGTH];
    private final float[] sum = new float[6];
    private int size;

    int size() {
        return size;
    }

    void clear() {
        size = 0;
    }

    /** Adds a turn; there must be room. */
    void add(int[] position, int at, float[] value, int valueAt, float[] lookahead, int lookaheadAt, boolean stray) {
        System.arraycopy(position, at, planes, 8 * size, 8);
        System.arraycopy(value, valueAt, values, 6 * size, 6);
        System.arraycopy(lookahead, lookaheadAt, expected, 6 * size, 6);
        strayed[size++] = stray;
    }

    boolean full() {
        return size == LENGTH;
    }

    /** Gives the targets of all turns and forgets them: the game is over. */
    void finish(float lambda, LessonList out) {
        give(size, lambda, out);
        size = 0;
    }

    /** Gives the targets of the older turns and forgets those. */
    void shift(float lambda, LessonList out) {
        int given = size - STAY;
        give(given, lambda, out);
        System.arraycopy(planes, 8 * given, planes, 0, 8 * STAY);
        System.arraycopy(values, 6 * given, values, 0, 6 * STAY);
        System.arraycopy(expected, 6 * given, expected, 0, 6 * STAY);
        System.arraycopy(strayed, given, strayed, 0, STAY);
        size = STAY;
    }

    private void give(int count, float lambda, LessonList out) {
        java.util.Arrays.fill(sum, 0);
        for (int t = size - 1; t >= 0; t--) {
            if (strayed[t]) {
                java.util.Arrays.fill(sum, 0);
            }
            Chances.swap(sum, 0);
            for (int k = 0; k < 6; k++) {
                sum[k] = expected[6 * t + k] - values[6 * t + k] + lambda * sum[k];
            }
            if (t < count) {
                out.add(planes, 8 * t, values, 6 * t, sum);
            }
        }
    }
}
