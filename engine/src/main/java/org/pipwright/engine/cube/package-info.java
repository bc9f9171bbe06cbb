/** The doubling cube: its state, what may be done with it, and what positions are worth with it. */
package org.pipwright.engine.cube;
