/** Training on a graphics card: residual networks, self-play in lockstep, targets by lookahead without the luck of the dice. */
package org.pipwright.training.cuda;
