package org.pipwright.engine.explain;

/**
 * A blot of the side that has played.
 *
 * @param point where it stands, counted from its own home, 1 to 24
 * @param shots how many of the opponent's 36 throws let it hit this blot with some legal play, 0 to 36
 */
public record Blot(int point, int shots) {}
