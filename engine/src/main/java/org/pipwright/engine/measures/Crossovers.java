package org.pipwright.engine.measures;

import org.pipwright.engine.position.Planes;

/**
 * Crossovers: moves of a checker from one quarter of the board into the next (common practice, no source). From the bar
 * into the opponent's home is one as well, and so is bearing off.
 *
 * @param home crossovers to bring every checker home
 * @param off crossovers to bear every checker off
 */
public record Crossovers(int home, int off) {
    private static final int QUARTER = 6;

    /**
     * The crossovers a side still needs.
     *
     * @param planes array that holds the side
     * @param at index of its plane 0
     * @return both numbers
     */
    public static Crossovers of(int[] planes, int at) {
        int home = 0;
        int off = 0;
        for (int place = 1; place <= Planes.BAR; place++) {
            int count = Planes.count(planes, at, place);
            int quarters = (place + QUARTER - 1) / QUARTER;
            off += count * quarters;
            home += count * (quarters - 1);
        }
        return new Crossovers(home, off);
    }
}
