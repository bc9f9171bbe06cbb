package org.pipwright.engine.review;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.search.LookaheadSettings;

/**
 * How deeply a review looks.
 *
 * @param lookahead future rolls averaged over, 0 to {@value LookaheadSettings#MAX}
 * @param games games played out from each decision that lookahead finds to cost something, rounded up to rounds of
 *     {@value RolloutSettings#ROUND}; 0 for none
 * @param seed of the dice of those games
 * @param simulateRaces whether races beyond the exact tables are simulated
 */
public record ReviewSettings(int lookahead, int games, long seed, boolean simulateRaces) implements Serializable {
    private static final int MAX_GAMES = 1_000_000;

    /**
     * Checks the ranges.
     *
     * @param lookahead future rolls averaged over
     * @param games games played out
     * @param seed of their dice
     * @param simulateRaces whether races are simulated
     * @throws IllegalArgumentException if one is out of range; one line says which
     */
    public ReviewSettings {
        if (lookahead < 0 || lookahead > LookaheadSettings.MAX) {
            throw new IllegalArgumentException("lookahead " + lookahead + ": use 0 to " + LookaheadSettings.MAX);
        }
        if (games > MAX_GAMES) {
            throw new IllegalArgumentException(games + " games from each decision: use up to " + MAX_GAMES);
        }
        if (games != 0) {
            games = RolloutSettings.DEFAULT.withTrials(games).trials();
        }
    }

    /** All that decides the numbers, one thing a line; nothing is said of races that are left to the net, as once all were. */
    List<String> identity() {
        List<String> lines = new ArrayList<>(List.of("lookahead " + lookahead, "games " + games, "seed " + seed));
        if (simulateRaces) {
            lines.add("races simulated");
        }
        return lines;
    }

    /** How hard the judge thinks. */
    Effort effort() {
        return Effort.lookahead(lookahead).withRaces(simulateRaces);
    }

    /** How hard it thinks where a decision seems to have cost something: games from there. */
    Effort playingOut() {
        return Effort.STATIC.withRaces(simulateRaces).withGames(games, seed);
    }
}
