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
}
