package org.pipwright.engine.drill;

import java.io.Serializable;
import org.pipwright.engine.judge.Effort;

/**
 * What makes a decision worth asking about, and how hard the judge thinks about it.
 *
 * @param cost what the mistake must give away at least, in points per game (in a match of the chance to win it, scaled as
 *     {@link CubeExercise#unit()} says); more than 0
 * @param margin what the second best choice must give away at least, in the same unit; more than 0
 * @param lookahead future rolls that the judge averages over, 0 to {@value #MAX_LOOKAHEAD}
 * @param simulateRaces whether races beyond the exact tables are simulated for the answer
 */
public record Clarity(double cost, double margin, int lookahead, boolean simulateRaces) implements Serializable {
    /** Largest lookahead of a drill, which judges hundreds of positions for one question. */
    public static final int MAX_LOOKAHEAD = 3;

    /** A first look with less lookahead only has to come this close to what is asked for. */
    static final double FIRST_LOOK = 0.5;

    /**
     * Checks the ranges.
     *
     * @param cost more than 0
     * @param margin more than 0
     * @param lookahead 0 to {@value #MAX_LOOKAHEAD}
     * @param simulateRaces whether races are simulated
     * @throws IllegalArgumentException if one is out of range
     */
    public Clarity {
        if (!(cost > 0 && margin > 0)) {
            throw new IllegalArgumentException(
                    "cost and margin are more than 0 points, not " + cost + " and " + margin);
        }
        if (lookahead < 0 || lookahead > MAX_LOOKAHEAD) {
            throw new IllegalArgumentException("lookahead " + lookahead + ": use 0 to " + MAX_LOOKAHEAD);
        }
    }

    /** How hard the judge thinks about the answer. */
    Effort effort() {
        return Effort.lookahead(lookahead).withRaces(simulateRaces);
    }

    /** Whether an exercise is hard and clear enough, or a share of that. */
    boolean met(Exercise exercise, double share) {
        return -exercise.cost() >= share * cost && exercise.margin() >= share * margin;
    }
}
