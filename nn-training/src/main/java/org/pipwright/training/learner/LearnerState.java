package org.pipwright.training.learner;

import java.util.List;

/**
 * The state of a learner.
 *
 * @param steps batches fitted so far
 * @param arrays weights and running means, in an order that is the learner's own
 */
public record LearnerState(long steps, List<float[]> arrays) {
    /**
     * Copies the list, not the arrays.
     *
     * @param steps batches fitted so far
     * @param arrays weights and running means
     */
    public LearnerState {
        arrays = List.copyOf(arrays);
    }
}
