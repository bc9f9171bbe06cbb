/** Exercises: positions of a theme where a weaker player goes wrong and the answer is clear. */
package org.pipwright.engine.drill;
