package org.pipwright.engine.cube;

/**
 * How well a cube is used, between 0 (as if it did not exist) and 1 (as if it were always turned at the perfect moment).
 * An owner who is far behind will often have no time to turn it at all; so the efficiency of an owned cube rises with its
 * owner's chance to win, in a straight line from one value at 20 % to another at 80 %. That shape is our own: on exact
 * bear-off tables wrong doubles and takes then cost five to ten times less than with the best single value. A cube in the centre is
 * used as one owned by the leader.
 *
 * @param behind efficiency for an owner with a chance of 20 % or less
 * @param ahead efficiency for an owner with a chance of 80 % or more
 */
public record CubeEfficiency(double behind, double ahead) {
    private static final double LOW = 0.2;
    private static final double HIGH = 0.8;

    /**
     * Checks the values.
     *
     * @param behind in [0, 1]
     * @param ahead in [0, 1]
     * @throws IllegalArgumentException if one is out of range
     */
    public CubeEfficiency {
        if (!(behind >= 0 && behind <= 1 && ahead >= 0 && ahead <= 1)) {
            throw new IllegalArgumentException("cube efficiencies lie in [0, 1], not " + behind + " and " + ahead);
        }
    }

    /**
     * The same efficiency for everybody, as in the model's published form.
     *
     * @param efficiency in [0, 1]
     * @return behind and ahead alike
     */
    public static CubeEfficiency constant(double efficiency) {
        return new CubeEfficiency(efficiency, efficiency);
    }

    /**
     * Efficiency of an owned cube.
     *
     * @param win its owner's chance to win
     * @return in [0, 1]
     */
    public double owned(double win) {
        double share = Math.min(Math.max((win - LOW) / (HIGH - LOW), 0), 1);
        return behind + (ahead - behind) * share;
    }
}
