package org.pipwright.engine.judge;

import java.io.Serializable;
import java.time.Duration;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.rollout.RolloutSettings;

/**
 * How hard a judge thinks. Immutable.
 *
 * @param lookahead future rolls to average over, at least 0; what is possible depends on the question
 * @param time if positive, look further and further ahead until it is up, whatever the lookahead says
 * @param games games to play out from the best few plays, or from the position before the roll; 0 for none
 * @param seed of their dice
 * @param simulateRaces whether races beyond the exact tables are simulated, which takes some hundredths of a second each
 *     and is far more accurate than the net; if not, their basis says that they are estimated
 */
@PublicApi
public record Effort(int lookahead, Duration time, int games, long seed, boolean simulateRaces)
        implements Serializable {
    /** The net, the tables and simulated races, without looking ahead. */
    public static final Effort STATIC = new Effort(0, Duration.ZERO, 0, RolloutSettings.DEFAULT.seed(), true);

    /**
     * Checks the ranges.
     *
     * @param lookahead at least 0
     * @param time not negative
     * @param games at least 0
     * @param seed any
     * @param simulateRaces whether races are simulated
     * @throws IllegalArgumentException if one is out of range
     */
    public Effort {
        if (lookahead < 0 || time.isNegative() || games < 0) {
            throw new IllegalArgumentException("lookahead " + lookahead + ", " + time.toMillis() + " ms and " + games
                    + " games: each is at least 0");
        }
    }

    /**
     * So much lookahead.
     *
     * @param rolls future rolls to average over, at least 0
     * @return the effort
     * @throws IllegalArgumentException if it is negative
     */
    public static Effort lookahead(int rolls) {
        return new Effort(rolls, Duration.ZERO, 0, STATIC.seed, true);
    }

    /**
     * As much lookahead as a time allows.
     *
     * @param time how long to search, positive
     * @return the effort
     * @throws IllegalArgumentException if there is no time
     */
    public static Effort within(Duration time) {
        if (time.isZero() || time.isNegative()) {
            throw new IllegalArgumentException("no time to search in: give more than 0");
        }
        return new Effort(0, time, 0, STATIC.seed, true);
    }

    /**
     * The same, and games on top.
     *
     * @param number games of each candidate, 0 for none; rounded up to whole rounds of {@value RolloutSettings#ROUND}
     * @return the effort
     * @throws IllegalArgumentException if it is negative
     */
    public Effort withGames(int number) {
        return new Effort(lookahead, time, number, seed, simulateRaces);
    }

    /**
     * The same, and games with other dice on top.
     *
     * @param number games of each candidate, 0 for none; rounded up to whole rounds of {@value RolloutSettings#ROUND}
     * @param other the seed of the dice
     * @return the effort
     * @throws IllegalArgumentException if the number is negative
     */
    public Effort withGames(int number, long other) {
        return new Effort(lookahead, time, number, other, simulateRaces);
    }

    /**
     * The same with races beyond the tables simulated, or judged by the net.
     *
     * @param simulated whether they are simulated
     * @return the effort
     */
    public Effort withRaces(boolean simulated) {
        return new Effort(lookahead, time, games, seed, simulated);
    }

    /** Whether the time decides, not the lookahead. */
    boolean timed() {
        return !time.isZero();
    }

    /** The settings of the games. */
    RolloutSettings rollout() {
        return RolloutSettings.DEFAULT.withTrials(games).withSeed(seed);
    }
}
