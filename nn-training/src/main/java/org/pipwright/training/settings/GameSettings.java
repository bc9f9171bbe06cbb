package org.pipwright.training.settings;

/**
 * How games of self-play are played.
 *
 * @param checkers checkers a side
 * @param opening the first roll
 * @param randomOpenings share of games, 0 to 1, that begin with some turns played at random
 * @param end where games end
 * @param maxTurns rolls of both sides after which a game is truncated
 */
public record GameSettings(int checkers, OpeningRoll opening, double randomOpenings, GameEnd end, int maxTurns) {}
