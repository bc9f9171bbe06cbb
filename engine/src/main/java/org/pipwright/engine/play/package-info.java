/** Position and roll to legal plays: generator, notation, and why a play is not legal. */
package org.pipwright.engine.play;
