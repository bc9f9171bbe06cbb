package org.pipwright.engine.drill;

import java.util.List;
import java.util.Optional;

/**
 * What decides which of the decisions that are given become exercises.
 *
 * @param theme what they are about; empty for anything
 * @param count how many are wanted, at least 1
 * @param clarity what makes a decision worth asking about
 * @param sifted whether they must be; if not, every decision becomes an exercise and clarity only says how hard to think
 * @param apart where they are sifted, positions with fewer checkers than this on other places are nearly equal, and only the
 *     first of them is used; at least 1
 */
public record SelectionSettings(Optional<Theme> theme, int count, Clarity clarity, boolean sifted, int apart) {
    /**
     * Checks the ranges.
     *
     * @param theme what they are about
     * @param count at least 1
     * @param clarity what makes a decision worth asking about
     * @param sifted whether they must be
     * @param apart at least 1
     * @throws IllegalArgumentException if one is out of range
     */
    public SelectionSettings {
        if (count < 1 || apart < 1) {
            throw new IllegalArgumentException(
                    "a selection needs at least 1 position and 1 checker apart: not " + count + " and " + apart);
        }
    }

    /**
     * Settings that make an exercise of every decision.
     *
     * @param count how many decisions there are, at least 1
     * @param lookahead future rolls that the judge averages over, 0 to {@value Clarity#MAX_LOOKAHEAD}
     * @param simulateRaces whether races beyond the exact tables are simulated for the answer
     * @return the settings
     */
    public static SelectionSettings all(int count, int lookahead, boolean simulateRaces) {
        Clarity any = new Clarity(Double.MIN_VALUE, Double.MIN_VALUE, lookahead, simulateRaces);
        return new SelectionSettings(Optional.empty(), count, any, false, 1);
    }

    boolean isNew(Exercise exercise, List<Exercise> taken) {
        return !sifted || Likeness.unlikeAll(exercise, taken, apart);
    }
}
