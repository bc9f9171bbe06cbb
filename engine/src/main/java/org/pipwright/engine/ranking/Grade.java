package org.pipwright.engine.ranking;

import java.util.Locale;
import org.pipwright.engine.PublicApi;

/** What a play's cost amounts to, in a word. The limits are our own choice, in points per game. */
@PublicApi
public enum Grade {
    /** Loses less than 0.010: no one can tell it from the best. */
    FINE(0.010),
    /** Loses less than 0.040. */
    THIN(0.040),
    /** Loses less than 0.100. */
    COSTLY(0.100),
    /** Loses 0.100 or more. */
    HEAVY(Double.POSITIVE_INFINITY);

    private final double limit;

    Grade(double limit) {
        this.limit = limit;
    }

    /**
     * The grade of a cost.
     *
     * @param cost equity less the best play's, in points per game, at most 0
     * @return the grade
     * @throws IllegalArgumentException if the cost is positive or not a number
     */
    public static Grade ofCost(double cost) {
        if (!(cost <= 0)) {
            throw new IllegalArgumentException("a cost is at most 0, not " + cost);
        }
        Grade grade = FINE;
        while (-cost >= grade.limit) {
            grade = values()[grade.ordinal() + 1];
        }
        return grade;
    }

    /**
     * The least that a choice of this grade gives away.
     *
     * @return points per game, at least 0
     */
    public double from() {
        return this == FINE ? 0 : values()[ordinal() - 1].limit;
    }

    /**
     * The grade as people and programs read it.
     *
     * @return {@code fine}, {@code thin}, {@code costly} or {@code heavy}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
