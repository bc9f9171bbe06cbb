package org.pipwright.engine.bearoff;

import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/**
 * Mean rolls that a side in a race needs to take all its checkers out of the opponent's home, own points 19 to 24, where
 * a backgammon would be lost, if that is all it plays for: exact for up to {@value #EXACT} checkers there, by the recursion
 * V(s) = 1 + mean over the rolls of the least V(s') (first-step analysis); in a race nothing is in the way, and dice that
 * are left over move other checkers. For more checkers the pips over 49/6, which is enough to choose plays by.
 */
final class Getaway {
    /** Own points 19 to 24 and the bar. */
    static final int OPPONENTS_HOME = 0x7F << 19;

    private static final int EXACT = 5;

    private static final int FIRST = 19;

    private static final int POINTS = 6;

    private static final float ROLLS_PER_PIP = 6 / 49f;

    private static final SideIndex INDEX = new SideIndex(POINTS, EXACT);

    private static final double[] ROLLS = solve();

    private Getaway() {}

    /** Mean rolls for a side whose four planes are in an array; four more ints serve as scratch. */
    static double rolls(int[] planes, int at, int[] scratch) {
        if ((Planes.occupied(planes, at) & OPPONENTS_HOME) == 0) {
            return 0;
        }
        for (int k = 0; k < Planes.SIDE; k++) {
            scratch[k] = (planes[at + k] & OPPONENTS_HOME) >>> FIRST - 1;
        }
        // A checker on the bar has an opponent's before it, so this would not be a race.
        return INDEX.covers(scratch, 0) ? ROLLS[INDEX.of(scratch, 0)] : ROLLS_PER_PIP * Planes.pips(scratch, 0);
    }

    private static double[] solve() {
        double[] rolls = new double[INDEX.size()];
        int[] planes = new int[Planes.SIDE];
        new PipLevels(INDEX, rolls.length)
                .run(
                        1,
                        () -> arrangement -> {
                            INDEX.write(arrangement, planes, 0);
                            rolls[arrangement] = arrangement == 0 ? 0 : 1 + meanLeast(planes, rolls);
                        },
                        TableProgress.NONE);
        return rolls;
    }

    private static double meanLeast(int[] planes, double[] rolls) {
        double mean = 0;
        for (Roll roll : Roll.all()) {
            double least = least(planes, roll.high(), roll.low(), roll.isDouble() ? 4 : 2, rolls);
            least = Math.min(least, least(planes, roll.low(), roll.high(), roll.isDouble() ? 4 : 2, rolls));
            mean += roll.probability() * least;
        }
        return mean;
    }

    /** The least that can be reached with so many dice, this one and that one by turns. */
    private static double least(int[] planes, int now, int then, int dice, double[] rolls) {
        int occupied = Planes.occupied(planes, 0) & Planes.ON_BOARD;
        if (dice == 0 || occupied == 0) {
            return rolls[INDEX.of(planes, 0)];
        }
        double least = Double.POSITIVE_INFINITY;
        for (int rest = occupied; rest != 0; rest &= rest - 1) {
            int point = Integer.numberOfTrailingZeros(rest);
            Planes.remove(planes, 0, point);
            if (point > now) {
                Planes.add(planes, 0, point - now);
            }
            least = Math.min(least, least(planes, then, now, dice - 1, rolls));
            if (point > now) {
                Planes.remove(planes, 0, point - now);
            }
            Planes.add(planes, 0, point);
        }
        return least;
    }
}
