package org.pipwright.cli.report;

import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.drill.CubeExercise;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.judge.PlayVerdict;

/**
 * What a choice in an exercise gives away, in the unit of the values beside it: chances in a match, points otherwise. Grades
 * go by points throughout.
 */
public final class GivenAway {
    private GivenAway() {}

    /**
     * What a play gives away.
     *
     * @param exercise the exercise
     * @param play one of its plays
     * @return such as {@code 0.0420 points} or {@code 1.05 % of the match}
     */
    public static String by(Exercise exercise, PlayVerdict play) {
        return words(exercise, play.cost(), play.points());
    }

    /**
     * What an action of the cube gives away.
     *
     * @param exercise the exercise
     * @param action one of its choices
     * @return likewise
     */
    public static String by(CubeExercise exercise, CubeAction action) {
        return words(exercise, exercise.values().cost(action), exercise.cost(action));
    }

    /** The same with a minus sign for a table; 0 for the best. */
    static String cost(Exercise exercise, PlayVerdict play) {
        return cost(exercise, play.cost(), play.points());
    }

    /** Likewise. */
    static String cost(CubeExercise exercise, CubeAction action) {
        return cost(exercise, exercise.values().cost(action), exercise.cost(action));
    }

    private static String cost(Exercise exercise, double chance, double points) {
        return match(exercise) ? Numbers.percentCost(chance) : Numbers.cost(points);
    }

    private static String words(Exercise exercise, double chance, double points) {
        return match(exercise) ? Numbers.finePercent(-chance) + " % of the match" : Numbers.size(-points) + " points";
    }

    private static boolean match(Exercise exercise) {
        return exercise.stakes() instanceof MatchStakes;
    }
}
