/** Self-play, targets, the learner, checkpoints and gates: how a net is made. */
package org.pipwright.training;
