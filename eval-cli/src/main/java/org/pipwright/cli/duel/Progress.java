package org.pipwright.cli.duel;

import java.io.PrintWriter;
import java.util.function.Supplier;

/** Shows how far a run of games, or of something else, has come. Used by one thread at a time. */
public interface Progress {
    /**
     * Games have been played.
     *
     * @param games number of games so far
     * @param note what is known so far, in a few words
     */
    void reached(long games, String note);

    /** Nothing more will come: takes the bar away. */
    void done();

    /**
     * Plays, and takes the bar away in any case.
     *
     * @param games plays the games
     * @param <T> what comes of them
     * @return what came of them
     */
    default <T> T during(Supplier<T> games) {
        try {
            return games.get();
        } finally {
            done();
        }
    }

    /**
     * A bar if standard error is a terminal, else a line now and then.
     *
     * @param games number of games of the whole run, or the most there can be
     * @param err where lines go
     * @return the display
     */
    static Progress of(long games, PrintWriter err) {
        return of(games, "games", err);
    }

    /**
     * The same for other things than games.
     *
     * @param all number of them in the whole run
     * @param what what they are, such as {@code turns}
     * @param err where lines go
     * @return the display
     */
    static Progress of(long all, String what, PrintWriter err) {
        // The launcher knows: Java itself cannot tell whether standard error is a terminal.
        return Boolean.getBoolean("pipwright.terminal") ? new BarProgress(all, what) : new LineProgress(all, what, err);
    }
}
