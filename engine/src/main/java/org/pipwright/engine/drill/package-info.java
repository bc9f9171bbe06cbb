/** Exercises: positions of a theme where a weaker player goes wrong and the answer is clear, or those of records and files. */
package org.pipwright.engine.drill;
