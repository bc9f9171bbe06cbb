/** Whole games and matches played for what is at stake, with and without the cube. */
package org.pipwright.engine.cubeplay;
