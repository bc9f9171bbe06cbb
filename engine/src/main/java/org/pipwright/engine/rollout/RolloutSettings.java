package org.pipwright.engine.rollout;

import java.io.Serializable;
import java.util.List;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.statistics.RepeatedLooks;

/**
 * What decides a rollout, besides the positions and the net: the same settings give the same numbers, whatever the number
 * of threads.
 *
 * @param trials most games a candidate; rounded up to whole rounds of {@value #ROUND}
 * @param seed of the dice
 * @param lookahead of both sides' checker play, 0 to {@value LookaheadSettings#MAX}
 * @param truncation number of rolls after which a game is truncated and valued by the net; 0 to play every game out
 * @param luckAdjusted whether the luck of each roll is taken off the results
 * @param sure stop once the best candidate is ahead of every other as surely as a single look would show at this many
 *     standard errors ({@link RepeatedLooks}); 0 to play all trials
 * @param pruning how checker play with lookahead prunes candidates
 */
public record RolloutSettings(
        int trials,
        long seed,
        int lookahead,
        int truncation,
        boolean luckAdjusted,
        double sure,
        LookaheadSettings pruning)
        implements Serializable {
    /** Games between two looks at the standings: one for each first throw of two dice. */
    public static final int ROUND = TrialDice.THROWS;

    /** 1,296 full games with luck adjustment: each pair of first throws once. */
    public static final RolloutSettings DEFAULT =
            new RolloutSettings(TrialDice.BLOCK, 1, 0, 0, true, 0, LookaheadSettings.DEFAULT);

    /** Far above any use, and low enough that counts and seeds stay in range. */
    private static final int MAX_TRIALS = 10_000_000;

    private static final int MAX_TRUNCATION = 10_000;

    /**
     * Checks the ranges.
     *
     * @param trials games a candidate
     * @param seed of the dice
     * @param lookahead of the checker play
     * @param truncation in rolls
     * @param luckAdjusted whether luck is taken off
     * @param sure in standard errors
     * @param pruning of the checker play
     * @throws IllegalArgumentException if one is out of range; one line says which
     */
    public RolloutSettings {
        require(trials >= 1 && trials <= MAX_TRIALS, trials + " trials: use 1 to " + MAX_TRIALS);
        require(
                lookahead >= 0 && lookahead <= LookaheadSettings.MAX,
                "lookahead " + lookahead + ": use 0 to " + LookaheadSettings.MAX);
        require(
                truncation >= 0 && truncation <= MAX_TRUNCATION,
                "truncation after " + truncation + " rolls: use 1 to " + MAX_TRUNCATION + ", or 0 for none");
        require(
                sure == 0 || sure >= 1 && sure <= 6,
                "sure to " + sure + " standard errors: use 1 to 6, or 0 to play all trials");
        trials = (trials + TrialDice.THROWS - 1) / TrialDice.THROWS * TrialDice.THROWS;
    }

    /** What decides a single trial, one setting a line; how many trials there are may change between runs. */
    List<String> identity() {
        return List.of(
                "seed " + seed,
                "lookahead " + lookahead,
                "truncation " + truncation,
                "variance reduction " + luckAdjusted,
                "pruning at first " + pruning.root(),
                "pruning of replies " + pruning.inner());
    }

    /** A line of {@link #identity} as version 2 of the file had it, in the words of today. */
    static String ofVersion2(String line) {
        return line.replaceFirst("^narrowing ", "pruning ")
                .replace("Narrowing[", "Pruning[")
                .replaceFirst("^luck adjusted ", "variance reduction ");
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new IllegalArgumentException(otherwise);
        }
    }

    /**
     * The same with another number of trials.
     *
     * @param number games a candidate
     * @return new settings
     */
    public RolloutSettings withTrials(int number) {
        return new RolloutSettings(number, seed, lookahead, truncation, luckAdjusted, sure, pruning);
    }

    /**
     * The same with other dice.
     *
     * @param number the seed
     * @return new settings
     */
    public RolloutSettings withSeed(long number) {
        return new RolloutSettings(trials, number, lookahead, truncation, luckAdjusted, sure, pruning);
    }

    /**
     * The same with another lookahead.
     *
     * @param number of future rolls the checker play averages over
     * @return new settings
     */
    public RolloutSettings withLookahead(int number) {
        return new RolloutSettings(trials, seed, number, truncation, luckAdjusted, sure, pruning);
    }

    /**
     * The same, truncated after a number of rolls.
     *
     * @param rolls of both sides; 0 to play every game out
     * @return new settings
     */
    public RolloutSettings withTruncation(int rolls) {
        return new RolloutSettings(trials, seed, lookahead, rolls, luckAdjusted, sure, pruning);
    }

    /**
     * The same with luck taken off or not.
     *
     * @param adjusted whether it is
     * @return new settings
     */
    public RolloutSettings withLuckAdjusted(boolean adjusted) {
        return new RolloutSettings(trials, seed, lookahead, truncation, adjusted, sure, pruning);
    }

    /**
     * The same, stopping once the best candidate is clear.
     *
     * @param errors how sure, in standard errors of a single look; 0 to play all trials
     * @return new settings
     */
    public RolloutSettings withSure(double errors) {
        return new RolloutSettings(trials, seed, lookahead, truncation, luckAdjusted, errors, pruning);
    }
}
