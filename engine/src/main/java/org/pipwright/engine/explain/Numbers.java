package org.pipwright.engine.explain;

import org.pipwright.engine.position.Planes;

/**
 * Which of the six numbers on a die do something for the side on roll, each played alone: hit a blot, and put a second
 * checker on a blot of its own on the points 3 to 7 or 18 to 22. Numbers that do both are duplicated: it cannot use them for
 * both at once (common practice, no source).
 *
 * @param hitting a bit for each number that hits, bit 1 to bit 6
 * @param covering a bit for each number that covers
 */
public record Numbers(int hitting, int covering) {
    private static final int FACES = 6;

    /**
     * The numbers of the side on roll.
     *
     * @param planes array that holds the position
     * @param at index of its first plane
     * @return the numbers
     */
    public static Numbers of(int[] planes, int at) {
        int onBar = Planes.count(planes, at, Planes.BAR);
        int own = Planes.occupied(planes, at) & Planes.POINTS;
        int from = onBar > 0 ? 1 << Planes.BAR : own;
        int other = at + Planes.SIDE;
        int theirs = Planes.mirror(Planes.occupied(planes, other) & Planes.POINTS);
        int blots = theirs & ~Planes.mirror(Planes.held(planes, other) & Planes.POINTS);
        int open = own & ~Planes.held(planes, at) & Prospects.WANTED;
        int hitting = 0;
        int covering = 0;
        for (int face = 1; face <= FACES; face++) {
            int to = from >>> face & Planes.POINTS;
            hitting |= (to & blots) == 0 ? 0 : 1 << face;
            covering |= (to & open) == 0 || onBar > 1 ? 0 : 1 << face;
        }
        return new Numbers(hitting, covering);
    }

    /**
     * Numbers that do at least one of both.
     *
     * @return 0 to 6
     */
    public int good() {
        return Integer.bitCount(hitting | covering);
    }

    /**
     * Numbers that do both.
     *
     * @return 0 to 6
     */
    public int duplicated() {
        return Integer.bitCount(hitting & covering);
    }
}
