package org.pipwright.engine.cube;

/**
 * Models a game as a fair walk of the chance to win on a grid from 0 to 1. Each roll makes the same number of coin-flip
 * steps of one cell, so that the chance changes by {@link #deviation()} a roll while it is away from the ends, which
 * absorb it. With ever smaller steps this is the continuous game of Keeler and Spencer (Operations Research 23, 1975), in
 * which a cube is used at the perfect moment; larger steps jump past that moment as real rolls do.
 *
 * @param cells number of cells between chance 0 and 1, even, so that an even game lies on the grid
 * @param stepsPerRoll coin-flip steps a roll, at least 1
 */
public record CubeWalk(int cells, int stepsPerRoll) {
    /**
     * Checks the arguments.
     *
     * @param cells even, 2 to 1000
     * @param stepsPerRoll 1 to 1000
     * @throws IllegalArgumentException if one is out of range
     */
    public CubeWalk {
        if (cells < 2 || cells > 1000 || cells % 2 != 0) {
            throw new IllegalArgumentException("a walk has an even number of cells from 2 to 1000, not " + cells);
        }
        if (stepsPerRoll < 1 || stepsPerRoll > 1000) {
            throw new IllegalArgumentException("a roll makes 1 to 1000 steps, not " + stepsPerRoll);
        }
    }

    /**
     * Standard deviation of the change of the chance in one roll.
     *
     * @return in units of chance, for chances away from 0 and 1
     */
    public double deviation() {
        return Math.sqrt(stepsPerRoll) / cells;
    }

    /**
     * Chance that the chance to win of a fair game without jumps comes to one level before another: a / (a + b), with a
     * the distance to the other level and b that to the first (Keeler and Spencer 1975, Lemma 1). It holds for coin-flip
     * steps too if all three lie on the grid. A double from b and a take from 1 - b at which doubling and waiting are
     * equal make b = 4/5 (their Theorem 1).
     *
     * @param from chance to win now, between the two levels
     * @param level the level asked about
     * @param other the other level, not equal to it
     * @return in [0, 1]
     * @throws IllegalArgumentException if the chance does not lie between the levels
     */
    public static double reachesFirst(double from, double level, double other) {
        double share = (from - other) / (level - other);
        if (!(share >= 0 && share <= 1)) {
            throw new IllegalArgumentException(from + " does not lie between " + level + " and " + other);
        }
        return share;
    }

    /**
     * Expected values before a roll from values after it.
     *
     * @param after a value for each grid point, cells + 1 of them
     * @param before where to write as many
     * @param spare room for as many, overwritten
     */
    void average(double[] after, double[] before, double[] spare) {
        double[] from = after;
        // Writing alternates between the two targets so that the last step ends in the right one.
        for (int step = 0; step < stepsPerRoll; step++) {
            double[] to = (stepsPerRoll - step) % 2 == 1 ? before : spare;
            to[0] = from[0];
            to[cells] = from[cells];
            for (int i = 1; i < cells; i++) {
                to[i] = (from[i - 1] + from[i + 1]) / 2;
            }
            from = to;
        }
    }

    /**
     * Reads a grid of values at any chance, in a straight line between grid points.
     *
     * @param values cells + 1 values
     * @param win chance in [0, 1]
     * @return the value
     */
    double at(double[] values, double win) {
        double place = Math.min(Math.max(win, 0), 1) * cells;
        int cell = Math.min((int) place, cells - 1);
        return values[cell] + (values[cell + 1] - values[cell]) * (place - cell);
    }
}
