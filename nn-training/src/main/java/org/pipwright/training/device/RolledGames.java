package org.pipwright.training.device;

import java.util.Optional;

/** Gives games to roll out and takes what came of them. Called by one thread at a time. */
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
     * @param equity what it came to for the side on roll at its start, with the luck of the rolls taken off, in points
     */
    void ended(RolledGame game, double equity);

    /**
     * Whether no more games will come.
     *
     * @return true once there is nothing to wait for but the games that were given
     */
    boolean done();
}
