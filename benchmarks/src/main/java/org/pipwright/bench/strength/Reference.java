package org.pipwright.bench.strength;

import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One line of a file of references: a decision with what its plays are worth.
 *
 * @param id number of the decision
 * @param regime its kind
 * @param position the position before the play, as text
 * @param roll the roll
 * @param game the players of the game it comes from
 * @param trials games a candidate
 * @param plays the candidates, best first
 * @param others every other play and what it costs with lookahead 1, at most -{@value Sampler#WITHIN} but for a single
 *     sensible play: not rolled out, for they are bad in any case
 */
public record Reference(
        int id,
        Regime regime,
        String position,
        String roll,
        String game,
        int trials,
        List<Rolled> plays,
        Map<String, Double> others)
        implements Serializable {
    /**
     * A play that was rolled out.
     *
     * @param play in the trade's notation
     * @param equity points per game for the side that plays
     * @param behind equity less that of the best play, at most 0
     * @param error standard error of that difference, 0 for the best
     */
    public record Rolled(String play, double equity, double behind, double error) implements Serializable {}

    /** Points that a play loses against the best; empty if the play is not one of this decision. */
    OptionalDouble loss(String play) {
        Optional<Rolled> rolled = rolled(play);
        if (rolled.isPresent()) {
            return OptionalDouble.of(-rolled.get().behind());
        }
        Double cost = others.get(play);
        return cost == null ? OptionalDouble.empty() : OptionalDouble.of(-cost);
    }

    /** Whether a play is the best, or within two standard errors of it: the rollout cannot tell which of them is. */
    boolean isBest(String play) {
        return rolled(play)
                .filter(rolled -> -rolled.behind() <= 2 * rolled.error())
                .isPresent();
    }

    private Optional<Rolled> rolled(String play) {
        return plays.stream().filter(rolled -> rolled.play().equals(play)).findAny();
    }
}
