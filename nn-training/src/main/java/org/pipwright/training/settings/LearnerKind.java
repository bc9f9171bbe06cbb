package org.pipwright.training.settings;

/** Who fits the networks. */
public enum LearnerKind {
    /** Our own learner, by any number of threads. */
    SPARSE,
    /** Deeplearning4j, by one thread. */
    REFERENCE
}
