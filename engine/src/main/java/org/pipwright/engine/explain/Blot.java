package org.pipwright.engine.explain;

import org.pipwright.engine.position.Planes;

/**
 * A blot of the side that has played.
 *
 * @param point where it stands, counted from its own home, 1 to 24
 * @param shots how many of the opponent's 36 throws let it hit this blot with some legal play, 0 to 36
 */
public record Blot(int point, int shots) {
    /**
     * What a hit costs its side: as far as the checker has come.
     *
     * @return 1 to 24 pips
     */
    public int pips() {
        return Planes.BAR - point;
    }
}
