package org.pipwright.training.run;

import java.util.Optional;
import org.pipwright.engine.network.Model;
import org.pipwright.training.learner.LearnerState;

/**
 * Where a run stands between two rounds: with the settings, all that is needed to go on as if never stopped.
 *
 * @param round rounds finished
 * @param games games played
 * @param samples samples learned from
 * @param seconds seconds of training so far
 * @param rateScale what the learning rate is multiplied with; falls when training had to be rolled back
 * @param contact learner of the contact network
 * @param race learner of the race network
 * @param stale the net before the last round, where settings let a stale one play
 */
record Checkpoint(
        long round,
        long games,
        long samples,
        double seconds,
        double rateScale,
        LearnerState contact,
        LearnerState race,
        Optional<Model> stale) {}
