package org.pipwright.training.settings;

/** What a sample should give. */
public enum TargetKind {
    /** What TD(lambda) has it. */
    TD,
    /** The chances at lookahead 1. */
    LOOKAHEAD,
    /** Those of a short rollout. */
    ROLLOUT,
    /** Those of another net. */
    NET
}
