/** The measures players use: race counts, shots, structure. Facts and rules of thumb, each with its source. */
package org.pipwright.engine.measures;
