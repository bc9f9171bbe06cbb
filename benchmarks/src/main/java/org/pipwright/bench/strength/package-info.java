/** The strength suite: decisions from games of several players, reference equities by rollout, and what a net loses. */
package org.pipwright.bench.strength;
