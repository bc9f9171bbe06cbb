package org.pipwright.cli.report;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.drill.CubeExercise;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.drill.PlayExercise;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.ranking.Grade;

/**
 * One choice in the answer of an exercise.
 *
 * @param choice a play, or an action of the cube
 * @param value what it is worth, as {@link #heading(Exercise)} says
 * @param cost what it gives away, in points, with a minus sign; 0 for the best
 * @param grade a word for that
 * @param best whether it is the answer
 * @param weak whether the weaker player chose it
 */
public record AnswerRow(String choice, String value, String cost, String grade, boolean best, boolean weak) {
    private static final int PLAYS = 3;

    /**
     * The choices worth showing, best first.
     *
     * @param question the exercise
     * @return the best three plays and the weaker player's, or the two actions
     */
    public static List<AnswerRow> of(Exercise question) {
        List<AnswerRow> rows = new ArrayList<>();
        if (question instanceof PlayExercise) {
            PlayExercise plays = (PlayExercise) question;
            for (int i = 0; i < plays.ranking().size(); i++) {
                PlayVerdict ranked = plays.ranking().get(i);
                if (i < PLAYS || ranked.equals(plays.weak())) {
                    rows.add(play(ranked, i == 0, ranked.equals(plays.weak())));
                }
            }
        } else {
            CubeExercise cube = (CubeExercise) question;
            rows.add(action(cube, cube.best()));
            rows.add(action(cube, cube.worse()));
        }
        return rows;
    }

    private static AnswerRow play(PlayVerdict ranked, boolean best, boolean weak) {
        return new AnswerRow(
                ranked.play().toString(),
                Numbers.points(ranked.value()),
                Numbers.cost(ranked.cost()),
                ranked.grade().word(),
                best,
                weak);
    }

    private static AnswerRow action(CubeExercise question, CubeAction action) {
        double value = value(question, action);
        double cost = question.cost(action);
        return new AnswerRow(
                DrillWords.choice(question, action),
                question.stakes() instanceof MatchStakes ? Numbers.finePercent(value) : Numbers.points(value),
                Numbers.cost(cost),
                Grade.ofCost(cost).word(),
                action == question.best(),
                action == question.weak());
    }

    private static double value(CubeExercise question, CubeAction action) {
        switch (action) {
            case ROLL:
                return question.values().noDouble();
            case DOUBLE:
                return question.values().doubled();
            case TAKE:
                return question.values().doubleTake();
            default:
                return question.values().doublePass();
        }
    }

    /**
     * What the values are.
     *
     * @param question the exercise
     * @return a heading for their column
     */
    public static String heading(Exercise question) {
        if (question instanceof PlayExercise) {
            return "equity";
        }
        return ((CubeExercise) question).stakes() instanceof MatchStakes
                ? "doubler wins match, %"
                : "points to the doubler";
    }
}
