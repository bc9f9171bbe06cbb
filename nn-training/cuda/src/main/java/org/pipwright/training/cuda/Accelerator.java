package org.pipwright.training.cuda;

import java.util.List;
import org.pipwright.engine.network.Lanes;

/**
 * What computes a run: networks that learn and answer, a memory of lessons, lookahead. Networks go by the order in which
 * they were added. Serves one thread at a time but where it says otherwise.
 */
interface Accelerator {
    /** What it is, for the manifest. */
    String description();

    /** To be called once by each thread before it calls anything else. */
    void use();

    /** Adds a network with these weights. */
    void add(ResidualShape shape, float[] weights);

    /** Adds layered networks, which answer as they are and never learn. */
    void add(Lanes lanes);

    /** Makes a network answer with the average of its weights as it is now. */
    void freeze(int net);

    /** A network as it is now. */
    NetState state(int net);

    /** Puts a network back to a state, and freezes it. */
    void restore(int net, NetState state);

    /** Steps a network has learned. */
    long steps(int net);

    /**
     * Means since the last call: cross-entropy in nats, root of the mean squared error of equity in points; not numbers if
     * nothing was learned.
     */
    double[] losses(int net);

    /** Takes lessons into the memory, where the newest replace the oldest. */
    void remember(LessonList lessons);

    /** Lessons in the memory. */
    int remembered();

    /** Draws a batch from the memory, from which each of some networks learns. */
    void learn(long seed, float rate, List<Integer> nets);

    /** The six chances of the first so many positions for the side on roll, by a frozen network. */
    void ask(int net, int[] positions, int count, float[] chances);

    /** Plays for a lane of games and their lookahead. */
    LaneJudge lane();

    /** Room for results that a network is asked about. */
    ResultJudge results(int capacity);

    /** Waits until all is computed. */
    void await();
}
