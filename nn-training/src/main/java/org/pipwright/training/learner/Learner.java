package org.pipwright.training.learner;

import org.pipwright.engine.network.Network;
import org.pipwright.training.selfplay.Samples;

/** Fits one network to samples, batch by batch. */
public interface Learner extends AutoCloseable {
    /**
     * Makes one step of gradient descent.
     *
     * @param samples where the batch lies
     * @param order indices of samples
     * @param from first index into {@code order}
     * @param to end of the batch in {@code order}, exclusive
     * @param rate learning rate, at least 0
     * @return mean cross-entropy between targets and chances over the batch before the step, in nats
     */
    double fit(Samples samples, int[] order, int from, int to, double rate);

    /**
     * The network as it stands.
     *
     * @return a copy that later steps do not change
     * @throws org.pipwright.engine.network.InvalidModelException if training has diverged to weights that are not finite
     */
    Network network();

    /**
     * Everything needed to go on later as if never stopped.
     *
     * @return a copy
     */
    LearnerState state();

    /**
     * Goes back to a state.
     *
     * @param state what {@link #state()} gave, of a learner of the same kind and shape
     * @throws IllegalArgumentException if it does not fit
     */
    void restore(LearnerState state);

    /** Frees what the learner holds. */
    @Override
    void close();
}
