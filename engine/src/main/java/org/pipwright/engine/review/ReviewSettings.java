package org.pipwright.engine.review;

import java.util.List;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.search.LookaheadSettings;

/**
 * How deeply a review looks.
 *
 * @param lookahead future rolls averaged over, 0 to {@value LookaheadSettings#MOST}
 * @param games games played out from each decision that lookahead finds to cost something, rounded up to rounds of
 *     {@value RolloutSettings#ROUND}; 0 for none
 * @param seed of the dice of those games
 */
public record ReviewSettings(int lookahead, int games, long seed) {
    private static final int MOST_GAMES = 1_000_000;

    /**
     * Checks the ranges.
     *
     * @param lookahead future rolls averaged over
     * @param games games played out
     * @param seed of their dice
     * @throws IllegalArgumentException if one is out of range; one line says which
     */
    public ReviewSettings {
        if (lookahead < 0 || lookahead > LookaheadSettings.MOST) {
            throw new IllegalArgumentException("lookahead " + lookahead + ": use 0 to " + LookaheadSettings.MOST);
        }
        if (games > MOST_GAMES) {
            throw new IllegalArgumentException(games + " games from each decision: use up to " + MOST_GAMES);
        }
        if (games != 0) {
            games = RolloutSettings.DEFAULT.withTrials(games).trials();
        }
    }

    /** All that decides the numbers, one thing a line. */
    List<String> identity() {
        return List.of("lookahead " + lookahead, "games " + games, "seed " + seed);
    }

    RolloutSettings rollouts() {
        return RolloutSettings.DEFAULT.withTrials(games).withSeed(seed);
    }
}
