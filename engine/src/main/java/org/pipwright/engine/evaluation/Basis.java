package org.pipwright.engine.evaluation;

import org.pipwright.engine.PublicApi;

/** What the chances of a position rest on. */
@PublicApi
public enum Basis {
    /**
     * The two-sided table, or all that can follow: exact, both sides playing to win, and where the winner is decided, the loser
     * for the fewest points.
     */
    EXACT("exact"),
    /**
     * The two one-sided distributions: exact for sides that each minimise their own mean number of rolls, whatever the
     * other does, and close to exact for sides that play to win.
     */
    DISTRIBUTIONS("from distributions"),
    /** A race beyond the distributions, each side of which was played many times up to where they begin. */
    SIMULATED("estimated by simulation"),
    /** A net, a rollout or a formula. */
    ESTIMATED("estimated");

    private final String title;

    Basis(String title) {
        this.title = title;
    }

    /**
     * The words for reports.
     *
     * @return {@code exact}, {@code from distributions}, {@code estimated by simulation} or {@code estimated}
     */
    public String title() {
        return title;
    }
}
