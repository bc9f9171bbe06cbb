/** The current networks play themselves: games, samples, temporal-difference targets. */
package org.pipwright.training.selfplay;
