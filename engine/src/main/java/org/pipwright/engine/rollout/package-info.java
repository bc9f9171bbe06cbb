/** Rollouts: positions played out many times with the same dice, with luck taken off the results and honest errors. */
package org.pipwright.engine.rollout;
