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
 * <p>Contact: by the mean pip count and the mean number of checkers on the board. A lead that a single hit takes away is
 * often gone before its owner can double, the more so the nearer the game is to its end, and so an owner who is ahead uses
 * the cube far worse there than in an opening. Fitted to games with the cube from positions of {@code fifth}'s own games,
 * luck taken off, and to the games with two and three checkers a side, which are solved with the cube; where there are few
 * checkers the solved games decide, from nine on the played ones, between them both.
 */
public final class EfficiencyByRegime {
    private static final ContactEfficiency CONTACT = new ContactEfficiency(
            new double[] {0.53, 0.64, 0.64, 0.61, 0.70, 0.51, 0.67, 0.80},
            new double[] {0.14, 0.44, 0.66, 0.81, 0.62, 0.67, 0.76, 0.77});

    private static final double[] PIPS = {7.5, 12.5, 17.5, 22.5, 27.5, 32.5, 50, 70, 90, 110};
    private static final double[] BEHIND = {0.33, 0.39, 0.40, 0.42, 0.42, 0.43, 0.50, 0.55, 0.58, 0.61};
    private static final double[] AHEAD = {0.48, 0.64, 0.71, 0.74, 0.78, 0.81, 0.84, 0.86, 0.88, 0.90};

    private EfficiencyByRegime() {}

    /**
     * The efficiency for a position.
     *
     * @param position an unfinished position
     * @return the efficiency; on straight lines between the fitted ones
     */
    public static CubeEfficiency of(Position position) {
        return of(position.toPlanes(), 0);
    }

    /** The same, for hot loops. */
    static CubeEfficiency of(int[] planes, int at) {
        double pips = (Planes.pips(planes, at) + Planes.pips(planes, at + Planes.SIDE)) / 2.0;
        if (!Planes.contact(planes, at)) {
            return ofRace(pips);
        }
        int checkers = Planes.checkers(planes, at, Planes.ON_BOARD)
                + Planes.checkers(planes, at + Planes.SIDE, Planes.ON_BOARD);
        return ofContact(pips, checkers / 2.0);
    }

    /**
     * The efficiency while there is contact.
     *
     * @param pips mean pip count of the two sides
     * @param checkers mean number of checkers that the sides have left
     * @return the efficiency
     */
    public static CubeEfficiency ofContact(double pips, double checkers) {
        return CONTACT.at(pips, checkers);
    }

    /**
     * The efficiency for a race.
     *
     * @param pips mean pip count of the two sides
     * @return the efficiency
     */
    public static CubeEfficiency ofRace(double pips) {
        return new CubeEfficiency(Lines.at(PIPS, BEHIND, 0, pips), Lines.at(PIPS, AHEAD, 0, pips));
    }
}
