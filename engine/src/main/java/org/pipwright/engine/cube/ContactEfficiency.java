package org.pipwright.engine.cube;

/**
 * Cube efficiencies while there is contact, on straight lines by the mean pip count of the two sides, one pair of lines for
 * positions with few checkers on the board and one for those with many; between them by the mean number of checkers a side.
 * Immutable.
 */
public final class ContactEfficiency {
    /** Numbers that decide the efficiency of one owner: those for few checkers, then those for many. */
    public static final int NUMBERS = 8;

    /** Up to so many checkers a side are few, as many as in the games that are solved with the cube. */
    private static final double FEW = 3;

    /** From so many on they are many. */
    private static final double MANY = 9;

    private static final double[] FEW_PIPS = {20, 30, 40, 55};
    private static final double[] MANY_PIPS = {50, 80, 120, 160};

    private final double[] behind;
    private final double[] ahead;

    /**
     * Efficiencies from their numbers.
     *
     * @param behind of an owner with a chance of 20 % or less: at 20, 30, 40 and 55 pips with up to three checkers a side,
     *     then at 50, 80, 120 and 160 pips with nine and more; each in [0, 1]
     * @param ahead the same of an owner with a chance of 80 % or more
     */
    public ContactEfficiency(double[] behind, double[] ahead) {
        if (behind.length != NUMBERS || ahead.length != NUMBERS) {
            throw new IllegalArgumentException("efficiencies in contact are given by " + NUMBERS + " numbers an owner");
        }
        this.behind = behind.clone();
        this.ahead = ahead.clone();
    }

    /**
     * The efficiency in a position.
     *
     * @param pips mean pip count of the two sides
     * @param checkers mean number of checkers that the sides have left
     * @return the efficiency
     */
    public CubeEfficiency at(double pips, double checkers) {
        double many = Math.min(Math.max((checkers - FEW) / (MANY - FEW), 0), 1);
        return new CubeEfficiency(at(behind, pips, many), at(ahead, pips, many));
    }

    private static double at(double[] numbers, double pips, double many) {
        double few = Lines.at(FEW_PIPS, numbers, 0, pips);
        return few + many * (Lines.at(MANY_PIPS, numbers, FEW_PIPS.length, pips) - few);
    }
}
