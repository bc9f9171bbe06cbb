package org.pipwright.engine.rollout;

/**
 * What a rollout with the cube says of one candidate.
 *
 * @param candidate its index among the candidates given
 * @param value points per unit of the cube asked about, or the chance to win the match
 * @param behind value of a play less that of the best, with the standard error of the difference; what a cube action costs
 *     the side that chooses it; 0 for the best
 * @param plain value without luck adjustment, from the same games
 * @param reduction variance of a trial without luck adjustment over that with it: how many times as many trials would be
 *     needed without; 1 if luck was not taken off, infinite if nothing but luck made trials differ, not a number if
 *     nothing did
 * @param doubled share of games in which somebody doubled later on
 * @param passed share of games that ended with a pass
 * @param cube what the cube showed at the end on average, where the game was truncated too
 */
public record CubefulLine(
        int candidate,
        Estimate value,
        Estimate behind,
        Estimate plain,
        double reduction,
        double doubled,
        double passed,
        double cube) {}
