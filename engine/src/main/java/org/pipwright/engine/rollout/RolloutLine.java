package org.pipwright.engine.rollout;

import java.util.Arrays;
import java.util.List;
import org.pipwright.engine.evaluation.Outcomes;

/**
 * What a rollout says of one candidate.
 *
 * @param candidate its index among the candidates given
 * @param chances the six chances, in the order of {@link Outcomes}; means with the luck
 *     taken off may lie a little below 0 or above 1
 * @param equity points per game, cubeless
 * @param behind equity less that of the best candidate, with the standard error of the difference; 0 for the best
 * @param plain equity without luck adjustment, from the same games
 * @param reduction variance of a trial without luck adjustment over that with it: how many times as many trials would be
 *     needed without; 1 if luck was not taken off, infinite if nothing but luck made trials differ, not a number if
 *     nothing did
 */
public record RolloutLine(
        int candidate, List<Estimate> chances, Estimate equity, Estimate behind, Estimate plain, double reduction) {
    /**
     * Copies the chances.
     *
     * @param candidate its index
     * @param chances six
     * @param equity points per game
     * @param behind points per game, at most 0
     * @param plain points per game
     * @param reduction a factor
     */
    public RolloutLine {
        chances = List.copyOf(chances);
    }

    /**
     * The chances as a distribution: means below 0 count as 0, and all are scaled to sum to 1.
     *
     * @return six chances of the counted side
     */
    public Outcomes outcomes() {
        double[] raised = chances.stream()
                .mapToDouble(chance -> Math.max(0, chance.mean()))
                .toArray();
        double sum = Arrays.stream(raised).sum();
        return new Outcomes(
                raised[0] / sum, raised[1] / sum, raised[2] / sum, raised[3] / sum, raised[4] / sum, raised[5] / sum);
    }
}
