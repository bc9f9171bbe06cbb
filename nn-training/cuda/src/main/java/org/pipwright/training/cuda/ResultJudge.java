package org.pipwright.training.cuda;

import java.nio.IntBuffer;

/** Results of plays that a network is asked about many at a time. */
interface ResultJudge {
    /** Where results go, eight ints each, the side that played first. */
    IntBuffer results();

    /** Asks a frozen network about the first so many. */
    void judge(int net, int rows);

    /** Equity of a result for the side that played, in points. */
    float equity(int row);

    /** The best of so many results for the side that played; of equals the first. */
    default int best(int first, int count) {
        int best = first;
        for (int k = first + 1; k < first + count; k++) {
            if (equity(k) > equity(best)) {
                best = k;
            }
        }
        return best;
    }
}
