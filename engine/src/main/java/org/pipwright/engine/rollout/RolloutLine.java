package org.pipwright.engine.rollout;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.pipwright.engine.evaluation.Outcomes;

/**
 * What a rollout says of one candidate.
 *
 * @param candidate its index among the candidates given
 * @param value points per game without the cube; with it points per unit of the cube asked about, or the chance to win the
 *     match
 * @param behind value less that of the best candidate, with the standard error of the difference; what a cube action costs
 *     the side that chooses it; 0 for the best
 * @param plain value without luck adjustment, from the same games
 * @param reduction variance of the mean without luck adjustment over that with it: how many times as many trials would be
 *     needed without; 1 if luck was not taken off, infinite if nothing but luck made trials differ, not a number if
 *     nothing did
 * @param chances without the cube the six chances, in the order of {@link Outcomes}; means with the luck taken off may lie a
 *     little below 0 or above 1. With the cube none
 * @param cube what happened with the cube, if there was one
 */
public record RolloutLine(
        int candidate,
        Estimate value,
        Estimate behind,
        Estimate plain,
        double reduction,
        List<Estimate> chances,
        Optional<Cube> cube) {
    /**
     * What happened with the cube in the games of a candidate.
     *
     * @param doubled share of games in which somebody doubled later on
     * @param passed share of games that ended with a pass
     * @param shown what the cube showed at the end on average, where the game was truncated too
     */
    public record Cube(double doubled, double passed, double shown) {}

    /**
     * Copies the chances.
     *
     * @param candidate its index
     * @param value of a game
     * @param behind the best
     * @param plain value
     * @param reduction a factor
     * @param chances six or none
     * @param cube if there was one
     */
    public RolloutLine {
        chances = List.copyOf(chances);
    }

    static RolloutLine of(Moments moments, int candidate, Estimate behind, boolean withCube) {
        List<Estimate> chances = new ArrayList<>();
        for (int k = 0; k < Outcomes.COUNT && !withCube; k++) {
            chances.add(moments.estimate(candidate, ChanceMeasure.CHANCES + k));
        }
        return new RolloutLine(
                candidate,
                moments.estimate(candidate, Moments.VALUE),
                behind,
                moments.estimate(candidate, Moments.PLAIN),
                moments.reduction(candidate),
                chances,
                withCube ? Optional.of(cube(moments, candidate)) : Optional.empty());
    }

    private static Cube cube(Moments moments, int candidate) {
        return new Cube(
                moments.mean(candidate, WorthMeasure.DOUBLED),
                moments.mean(candidate, WorthMeasure.PASSED),
                moments.mean(candidate, WorthMeasure.CUBE));
    }

    /**
     * The chances as a distribution: means below 0 count as 0, and all are scaled to sum to 1. Not for games with the cube.
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
