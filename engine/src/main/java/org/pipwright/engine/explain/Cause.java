package org.pipwright.engine.explain;

/**
 * What one kind of fact contributes to the difference between two plays.
 *
 * @param motive the kind of fact
 * @param points what it costs the weaker play, points per game; negative if it speaks for it
 * @param measured whether the opponent's rolls or the chances were asked for it; if not, it is what such facts count on
 *     average
 */
public record Cause(Motive motive, double points, boolean measured) {
    // Written out: linking those that a record comes with takes ten milliseconds, once, which in a short answer show.

    @Override
    public boolean equals(Object other) {
        return other instanceof Cause cause
                && motive == cause.motive
                && Double.compare(points, cause.points) == 0
                && measured == cause.measured;
    }

    @Override
    public int hashCode() {
        return 31 * motive.hashCode() + Double.hashCode(points);
    }
}
