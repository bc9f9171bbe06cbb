package org.pipwright.engine.matchtable;

import org.pipwright.engine.cube.CubeEfficiency;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeWalk;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.score.MatchScore;

/**
 * How cubes are used in a match, by the kind of position: how much a roll changes, and how much of what the walk makes of an
 * owned cube its owner really gets; the rest of it lies dead. Who is far behind in a race often has no time left to turn it,
 * which the walk does not know.
 *
 * <p>The efficiencies are fitted by least squares ({@code match-cube} of the benchmarks prints them): in races, by the mean
 * pip count of the two sides, to exact values at the scores 3-3, 5-3, 3-5 and 5-5, up to 35 pips of bear-offs of seven
 * checkers and above of pip races without waste. In contact games with the cube came to 0.85 +- 0.06 and 0.95 +- 0.05, which
 * scored no better than 1 on other positions. Whose opponent wins the match with this cube anyway turns it at the next roll,
 * whatever the position: then the walk is right as it is. So it is with a cube in the centre, for which the fit came to
 * efficiencies of 0.8 to 1.
 *
 * @param walk how chances move
 * @param efficiency of an owned cube, as a share of what the walk makes of it
 */
public record CubeUse(CubeWalk walk, CubeEfficiency efficiency) {
    /** The walk of a usual game: steps as in the shipped match table, measured on the first net's games. */
    private static final CubeWalk USUAL = new CubeWalk(50, 16);

    /** A long race changes less with each roll. */
    private static final CubeWalk CALM = new CubeWalk(50, 9);

    private static final double LONG = 50;

    private static final CubeUse CONTACT = new CubeUse(USUAL, CubeEfficiency.constant(1));

    private static final double[] PIPS = {15, 20, 25, 30, 42.5, 60, 80, 100, 120};
    private static final double[] BEHIND = {0.28, 0.36, 0.40, 0.41, 0.50, 0.56, 0.62, 0.67, 0.70};
    private static final double[] AHEAD = {0.89, 0.89, 0.92, 0.96, 0.98, 0.96, 0.99, 1, 1};

    /**
     * In a position.
     *
     * @param planes array that holds an unfinished position
     * @param at index of its first plane
     * @return how cubes are used there
     */
    public static CubeUse of(int[] planes, int at) {
        return Planes.contact(planes, at)
                ? CONTACT
                : ofRace((Planes.pips(planes, at) + Planes.pips(planes, at + Planes.SIDE)) / 2.0);
    }

    /**
     * In a race.
     *
     * @param pips mean pip count of the two sides
     * @return how cubes are used there
     */
    public static CubeUse ofRace(double pips) {
        CubeWalk walk = pips < LONG ? USUAL : CALM;
        int last = PIPS.length - 1;
        if (pips <= PIPS[0]) {
            return new CubeUse(walk, new CubeEfficiency(BEHIND[0], AHEAD[0]));
        }
        int i = 1;
        while (i < last && PIPS[i] < pips) {
            i++;
        }
        double share = Math.min(1, (pips - PIPS[i - 1]) / (PIPS[i] - PIPS[i - 1]));
        return new CubeUse(walk, new CubeEfficiency(between(BEHIND, i, share), between(AHEAD, i, share)));
    }

    private static double between(double[] values, int i, double share) {
        return values[i - 1] + (values[i] - values[i - 1]) * share;
    }

    /**
     * What rolling is worth.
     *
     * @param score seen from the side on roll
     * @param cube seen from that side
     * @param win its chance to win
     * @param dead what it would be worth if nobody turned the cube any more
     * @param walked what the walk makes of it
     * @return value to that side
     */
    public double rolling(MatchScore score, CubeState cube, double win, double dead, double walked) {
        boolean mine = cube.owner() == CubeOwner.ME;
        if (cube.owner() == CubeOwner.CENTRE || (mine ? score.theirs() : score.mine()) <= cube.value()) {
            return walked;
        }
        return dead + efficiency.owned(mine ? win : 1 - win) * (walked - dead);
    }
}
