/** Whole games and matches played with the cube. */
package org.pipwright.engine.cubeplay;
