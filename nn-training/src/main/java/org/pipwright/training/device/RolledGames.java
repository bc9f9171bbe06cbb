package org.pipwright.training.device;

import java.util.Optional;

/** Supplies games to roll out and takes their results. Called by one thread at a time. */
public interface RolledGames {
    /**
     * The next game.
     *
     * @return a game; empty if there is none, or none before some of those given are over
     */
    Optional<RolledGame> next();

    /**
     * A game is over.
     *
     * @param game one that was given
     * @param equity its result for the side on roll at its start, after variance reduction, in points
     */
    void ended(RolledGame game, double equity);

    /**
     * Whether no more games will come.
     *
     * @return true once there is nothing to wait for but the games that were given
     */
    boolean done();
}
