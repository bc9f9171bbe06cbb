package org.pipwright.engine.explain;

/**
 * What one kind of fact contributes to the difference between two plays.
 *
 * @param motive the kind of fact
 * @param points what it costs the weaker play, points per game; negative if it speaks for it
 * @param measured whether the opponent's rolls or the chances were asked for it; if not, it is what such facts count on
 *     average
 */
public record Cause(Motive motive, double points, boolean measured) {}
