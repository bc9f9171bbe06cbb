package org.pipwright.training.settings;

/** The learner that fits the networks. */
public enum LearnerKind {
    /** Our own learner, by any number of threads. */
    SPARSE,
    /** Deeplearning4j, by one thread. */
    REFERENCE
}
