package org.pipwright.training.device;

import org.pipwright.engine.network.Net;

/**
 * Games of a net against itself: it chooses without lookahead among all plays. Dice are those of the game's number, so the
 * games are the processor's unless a decision is rounded otherwise.
 *
 * @param net plays both sides
 * @param seed of the dice
 * @param every one position of so many turns is taken, beginning with one of the first so many at random; at least 1
 */
public record SelfPlayRules(Net net, long seed, int every) {}
