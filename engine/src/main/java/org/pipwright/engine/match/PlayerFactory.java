package org.pipwright.engine.match;

/** Makes players of one kind: one for each thread. Itself safe for all threads. */
@FunctionalInterface
public interface PlayerFactory {
    /**
     * Makes a player.
     *
     * @return a fresh one, for one thread
     */
    Player create();
}
