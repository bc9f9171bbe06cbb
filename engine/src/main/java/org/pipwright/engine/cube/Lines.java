package org.pipwright.engine.cube;

/** Values on straight lines between given ones. */
final class Lines {
    private Lines() {}

    /**
     * The value at a place; outside the given places that at the nearest.
     *
     * @param places rising
     * @param values from {@code first} on, one a place
     */
    static double at(double[] places, double[] values, int first, double place) {
        int last = places.length - 1;
        double within = Math.min(Math.max(place, places[0]), places[last]);
        int i = 1;
        while (i < last && places[i] < within) {
            i++;
        }
        double share = (within - places[i - 1]) / (places[i] - places[i - 1]);
        double before = values[first + i - 1];
        return before + (values[first + i] - before) * share;
    }
}
