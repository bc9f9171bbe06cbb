package org.pipwright.engine.measures;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.position.Planes;

/**
 * How a side's checkers stand; all points are counted from its own home. Usual words of the game (common practice, no
 * source).
 *
 * @param made points with two checkers or more, from low to high
 * @param blots points with one checker, from low to high
 * @param primeLength most made points in a row, 0 if none is made
 * @param primeFrom lowest point of the first such row, 0 if none
 * @param anchors made points in the opponent's home: 19 to 24
 * @param checkersBack checkers in the opponent's home or on the bar
 * @param onBar checkers on the bar
 */
public record Structure(
        List<Integer> made,
        List<Integer> blots,
        int primeLength,
        int primeFrom,
        List<Integer> anchors,
        int checkersBack,
        int onBar) {

    private static final int OPPONENTS_HOME = 0x3F << 19;

    /**
     * The structure of a side.
     *
     * @param planes array that holds the side
     * @param at index of its plane 0
     * @return the structure
     */
    public static Structure of(int[] planes, int at) {
        int made = Planes.held(planes, at) & Planes.POINTS;
        int blots = planes[at] & ~Planes.held(planes, at) & Planes.POINTS;
        int length = 0;
        int ends = made;
        for (int run = made; run != 0; run &= run >>> 1) {
            ends = run;
            length++;
        }
        return new Structure(
                points(made),
                points(blots),
                length,
                length == 0 ? 0 : Integer.numberOfTrailingZeros(ends),
                points(made & OPPONENTS_HOME),
                Planes.checkers(planes, at, OPPONENTS_HOME | 1 << Planes.BAR),
                Planes.count(planes, at, Planes.BAR));
    }

    private static List<Integer> points(int bits) {
        List<Integer> points = new ArrayList<>();
        for (int rest = bits; rest != 0; rest &= rest - 1) {
            points.add(Integer.numberOfTrailingZeros(rest));
        }
        return List.copyOf(points);
    }
}
