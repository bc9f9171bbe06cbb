/** A training run from its first game to its last checkpoint. */
package org.pipwright.training.run;
