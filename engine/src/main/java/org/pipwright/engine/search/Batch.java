package org.pipwright.engine.search;

import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;

/**
 * Positions before a roll, side by side, with what a search finds of each: six chances of the side on roll, and what
 * rolling is worth to it with each of some cubes.
 */
final class Batch {
    final int cubes;
    final int[] planes;
    final float[] chances;
    final double[] rolling;

    /** Room for so many positions with so many cubes. */
    Batch(int size, int cubes) {
        this.cubes = cubes;
        planes = new int[size * Planes.STRIDE];
        chances = new float[size * Outcomes.COUNT];
        rolling = new double[size * cubes];
    }

    /** A single position. */
    static Batch of(int[] planes, int at, int cubes) {
        Batch batch = new Batch(1, cubes);
        System.arraycopy(planes, at, batch.planes, 0, Planes.STRIDE);
        return batch;
    }
}
