package org.pipwright.engine.review;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.judge.PlayVerdict;

/**
 * What was found about a turn. Values are those of {@link org.pipwright.engine.cube.CubeTerms}: points per unit of the
 * cube in money play, chances to win the match in a match.
 *
 * @param chances six chances of the side on roll before the turn
 * @param cube values of its cube actions; empty if it had no choice
 * @param luck of the roll, for the side that rolled: value after its best play less the mean over all rolls; empty if
 *     there was no roll
 * @param basis what the values of the cube actions rest on, without them the chances
 * @param options the best play, then others and the one that was made by their values, however deeply looked at; none if
 *     there was no roll
 */
public record Finding(
        Outcomes chances, Optional<CubeValues> cube, OptionalDouble luck, Basis basis, List<PlayVerdict> options) {
    /**
     * Keeps the options.
     *
     * @param chances six chances of the side on roll
     * @param cube values of its cube actions
     * @param luck of the roll
     * @param basis what was found before the roll rests on
     * @param options the plays looked at
     */
    public Finding {
        options = List.copyOf(options);
    }
}
