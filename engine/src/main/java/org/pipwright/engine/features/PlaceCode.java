package org.pipwright.engine.features;

import org.pipwright.engine.position.Planes;

/**
 * How the number of checkers on one place becomes {@value #LENGTH} inputs, shared by all feature sets so far. Points and
 * the bar follow Tesauro, Machine Learning 8 (1992), 257-277, widened by one unit: exactly one (a blot), at least two (a
 * held point), at least three, at least four, and a third of every checker beyond four. Checkers borne off count as ramps
 * with bends at one, three, five and ten.
 */
public final class PlaceCode {
    /** Inputs a place. */
    public static final int LENGTH = 5;

    private static final int MAX_CHECKERS = 15;

    private static final float[][] OFF = table(Planes.OFF);

    private static final float[][] POINT = table(1);

    private PlaceCode() {}

    private static float[][] table(int place) {
        float[][] table = new float[MAX_CHECKERS + 1][LENGTH];
        for (int count = 0; count <= MAX_CHECKERS; count++) {
            for (int k = 0; k < LENGTH; k++) {
                table[count][k] = value(place, count, k);
            }
        }
        return table;
    }

    /** All inputs of a place; not to be changed. */
    static float[] values(int place, int count) {
        return (place == Planes.OFF ? OFF : POINT)[count];
    }

    /**
     * One input.
     *
     * @param place 0 (off) to 25 (bar)
     * @param count checkers there, 0 to 15
     * @param k which of the {@value #LENGTH} inputs
     * @return its value, 0 to 11/3
     */
    public static float value(int place, int count, int k) {
        return place == Planes.OFF ? off(count, k) : point(count, k);
    }

    private static float point(int count, int k) {
        switch (k) {
            case 0:
                return count == 1 ? 1 : 0;
            case 4:
                return Math.max(0, count - 4) / 3f;
            default:
                return count > k ? 1 : 0;
        }
    }

    private static float off(int count, int k) {
        switch (k) {
            case 0:
                return Math.min(count, 1);
            case 1:
                return Math.min(count, 3) / 3f;
            case 2:
                return Math.min(count, 5) / 5f;
            case 3:
                return Math.max(0, Math.min(count - 5, 5)) / 5f;
            default:
                return Math.max(0, count - 10) / 5f;
        }
    }
}
