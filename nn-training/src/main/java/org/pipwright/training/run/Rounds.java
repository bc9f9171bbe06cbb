package org.pipwright.training.run;

import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.BooleanSupplier;

/** Has rounds played; a net that may be stale plays the next one elsewhere while this machine learns from the last. */
final class Rounds {
    private final Players players;
    private final BooleanSupplier stop;
    private FutureTask<Round> begun;
    private volatile boolean dropping;

    Rounds(Players players, BooleanSupplier stop) {
        this.players = players;
        this.stop = stop;
    }

    /** The round that was begun before, else the one that is wanted; null if told to stop before its last game. */
    Round next(Players.Wanted wanted) {
        if (begun == null) {
            return players.play(wanted, stop);
        }
        FutureTask<Round> came = begun;
        begun = null;
        return result(came);
    }

    /** Begins the round that will be asked for next, where that is of use. */
    void begin(Players.Wanted wanted) {
        if (players.elsewhere() && wanted.games() > 0) {
            dropping = false;
            begun = new FutureTask<>(() -> players.play(wanted, () -> dropping || stop.getAsBoolean()));
            Thread thread = new Thread(begun, "pipwright-round");
            thread.setDaemon(true);
            thread.start();
        }
    }

    /** Gives up what was begun. */
    void drop() {
        if (begun != null) {
            dropping = true;
            FutureTask<Round> vain = begun;
            begun = null;
            result(vain);
        }
    }

    private static Round result(FutureTask<Round> task) {
        try {
            return task.get();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException why) {
                throw why;
            }
            throw new IllegalStateException("a round could not be played", e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while a round was played", e);
        }
    }
}
