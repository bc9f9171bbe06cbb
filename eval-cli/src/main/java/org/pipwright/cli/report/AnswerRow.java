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
 * @param cost what it gives away, in the unit of the value, with a minus sign; 0 for the best
 * @param grade a word for that
 * @param best whether it is the answer
 * @param weak whether it is the weaker choice
 */
public record AnswerRow(String choice, String value, String cost, String grade, boolean best, boolean weak) {
    private static final int PLAYS = 3;

    /**
     * The choices worth showing, best first.
     *
     * @param question the exercise
     * @return the best three plays and the weaker one, or the two actions
     */
    public static List<AnswerRow> of(Exercise question) {
        List<AnswerRow> rows = new ArrayList<>();
        if (question instanceof PlayExercise) {
            PlayExercise plays = (PlayExercise) question;
            for (int i = 0; i < plays.ranking().size(); i++) {
                PlayVerdict ranked = plays.ranking().get(i);
                if (i < PLAYS || ranked.equals(plays.weak())) {
                    rows.add(play(plays, ranked, i == 0));
                }
            }
        } else {
            CubeExercise cube = (CubeExercise) question;
            rows.add(action(cube, cube.best()));
            rows.add(action(cube, cube.worse()));
        }
        return rows;
    }

    private static AnswerRow play(PlayExercise question, PlayVerdict ranked, boolean best) {
        return new AnswerRow(
                ranked.play().toString(),
                value(question, ranked.value()),
                GivenAway.cost(question, ranked),
                ranked.grade().word(),
                best,
                ranked.equals(question.weak()));
    }

    private static String value(Exercise question, double value) {
        return question.stakes() instanceof MatchStakes ? Numbers.finePercent(value) : Numbers.points(value);
    }

    private static AnswerRow action(CubeExercise question, CubeAction action) {
        return new AnswerRow(
                DrillWords.choice(question, action),
                value(question, worth(question, action)),
                GivenAway.cost(question, action),
                Grade.ofCost(question.cost(action)).word(),
                action == question.best(),
                action == question.weak());
    }

    private static double worth(CubeExercise question, CubeAction action) {
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
        boolean match = question.stakes() instanceof MatchStakes;
        if (question instanceof PlayExercise) {
            return match ? "wins match, %" : "equity";
        }
        return match ? "doubler wins match, %" : "points to the doubler";
    }
}
