package org.pipwright.engine.cube;

import org.pipwright.engine.position.Position;

/**
 * Cube efficiencies by the kind of position, fitted by least squares to exact or measured values ({@code CubeFitMain} of
 * the benchmarks prints them).
 *
 * <p>Races, by the mean pip count of the two sides: up to 25 from exact two-sided bear-offs of up to seven checkers, above
 * from the exact pip race without waste. Contact: from the fair walk whose step is the measured change of the chance to
 * win in a roll of the first net's games, with a quarter of the games gammons.
 */
public final class EfficiencyByRegime {
    /** While the sides have not passed each other. */
    public static final CubeEfficiency CONTACT = new CubeEfficiency(0.82, 0.71);

    private static final double[] PIPS = {7.5, 12.5, 17.5, 22.5, 27.5, 45, 65, 85, 105, 125};
    private static final double[] BEHIND = {0.24, 0.32, 0.34, 0.35, 0.36, 0.49, 0.54, 0.57, 0.60, 0.62};
    private static final double[] AHEAD = {0.48, 0.65, 0.71, 0.75, 0.78, 0.83, 0.86, 0.88, 0.89, 0.90};

    private EfficiencyByRegime() {}

    /**
     * The efficiency for a position.
     *
     * @param position an unfinished position
     * @return the efficiency; in races on straight lines between the fitted ones
     */
    public static CubeEfficiency of(Position position) {
        if (position.contact()) {
            return CONTACT;
        }
        return ofRace((position.pips() + position.opponentPips()) / 2.0);
    }

    /**
     * The efficiency for a race.
     *
     * @param pips mean pip count of the two sides
     * @return the efficiency
     */
    public static CubeEfficiency ofRace(double pips) {
        int last = PIPS.length - 1;
        double within = Math.min(Math.max(pips, PIPS[0]), PIPS[last]);
        int i = 1;
        while (i < last && PIPS[i] < within) {
            i++;
        }
        double share = (within - PIPS[i - 1]) / (PIPS[i] - PIPS[i - 1]);
        return new CubeEfficiency(between(BEHIND, i, share), between(AHEAD, i, share));
    }

    private static double between(double[] values, int i, double share) {
        return values[i - 1] + (values[i] - values[i - 1]) * share;
    }
}
