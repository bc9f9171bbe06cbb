package org.pipwright.engine.cube;

import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/**
 * Cube efficiencies by the kind of position, fitted by least squares ({@code cube-fit} and
 * {@code contact-fit} of the benchmarks print them).
 *
 * <p>Races, by the mean pip count of the two sides: up to 35 from exact two-sided bear-offs of up to seven checkers, above
 * from the exact pip race without waste. At chances of 10 to 90 % the equities of owned cubes are then within 0.02 to 0.03
 * (root mean square) of the exact ones at 20 to 35 pips and 0.01 from 50 pips on, those of centred cubes within 0.05 and
 * 0.03; the last few rolls, where the model is at its worst (0.06 to 0.11), are exact anyway where a table covers them.
 * Doubling decisions by the model then cost 0.0002 to 0.0005 a position at 15 to 35 pips, answers 0.0001 to 0.0003, and
 * either less than 0.0001 above.
 *
 * <p>Contact: from 59,048 games with the cube, played by the first net without lookahead from positions of its own games
 * ({@code contact-fit}, 40,000 games, seed 7): the results come to an efficiency of 0.72 +- 0.08 (standard error) for
 * owners with a chance of 20 to 40 %, 0.77 +- 0.05 for 40 to 60 % and 0.81 +- 0.06 for 60 to 80 %; the line through them
 * is used. The fair walk with the measured step comes to 0.82 and 0.71 at the ends, about 0.77 in the middle.
 */
public final class EfficiencyByRegime {
    /** While the sides have not passed each other. */
    public static final CubeEfficiency CONTACT = new CubeEfficiency(0.70, 0.84);

    private static final double[] PIPS = {7.5, 12.5, 17.5, 22.5, 27.5, 32.5, 50, 70, 90, 110};
    private static final double[] BEHIND = {0.33, 0.39, 0.40, 0.42, 0.42, 0.43, 0.50, 0.55, 0.58, 0.61};
    private static final double[] AHEAD = {0.48, 0.64, 0.71, 0.74, 0.78, 0.81, 0.84, 0.86, 0.88, 0.90};

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

    /** The same, for hot loops. */
    static CubeEfficiency of(int[] planes, int at) {
        if (Planes.contact(planes, at)) {
            return CONTACT;
        }
        return ofRace((Planes.pips(planes, at) + Planes.pips(planes, at + Planes.SIDE)) / 2.0);
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
