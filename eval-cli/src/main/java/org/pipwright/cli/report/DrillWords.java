package org.pipwright.cli.report;

import java.util.StringJoiner;
import org.pipwright.cli.picture.Scene;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.drill.CubeExercise;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.drill.PlayExercise;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.score.MatchScore;

/** An exercise in words and as a scene, seen from the side that is asked. */
public final class DrillWords {
    private DrillWords() {}

    /**
     * What is asked.
     *
     * @param question the exercise
     * @return a sentence or two, addressed to the side that is asked
     */
    public static String prompt(Exercise question) {
        if (question instanceof PlayExercise) {
            return "Play " + ((PlayExercise) question).roll() + ".";
        }
        CubeExercise cube = (CubeExercise) question;
        boolean turned = cube.cube().owner() != CubeOwner.CENTRE;
        int doubled = 2 * cube.cube().value();
        if (cube.answering()) {
            return (turned ? "Redoubled to " : "Doubled to ") + doubled + ": take or pass?";
        }
        return turned ? "Redouble to " + doubled + ", or roll?" : "Double or roll?";
    }

    /**
     * What is played for; empty for plays, which are judged without the cube.
     *
     * @param question the exercise
     * @return a few words
     */
    public static String stakes(Exercise question) {
        if (question instanceof PlayExercise) {
            return "";
        }
        CubeExercise cube = (CubeExercise) question;
        MatchScore score = score(cube);
        return score == null
                ? "Money play, Jacoby rule"
                : "Match: you need " + points(score.mine()) + ", your opponent " + score.theirs();
    }

    private static String points(int points) {
        return points + (points == 1 ? " point" : " points");
    }

    /** The score as the side that is asked sees it; null without a match. */
    private static MatchScore score(CubeExercise question) {
        if (!(question.stakes() instanceof MatchStakes)) {
            return null;
        }
        MatchScore score = ((MatchStakes) question.stakes()).score();
        return question.answering() ? score.swapped() : score;
    }

    /**
     * What is shown.
     *
     * @param question the exercise
     * @return the scene, seen from the side that is asked
     */
    public static Scene scene(Exercise question) {
        Position position = question.position();
        if (question instanceof PlayExercise) {
            return Scene.of(position).with(((PlayExercise) question).roll(), null);
        }
        CubeExercise asked = (CubeExercise) question;
        CubeState cube = asked.answering() ? asked.cube().swapped() : asked.cube();
        Scene scene =
                Scene.of(asked.answering() ? position.swapped() : position).with(cube);
        Scene scored = score(asked) == null ? scene : scene.with(score(asked));
        return asked.answering() ? scored.waiting() : scored;
    }

    /**
     * The answer in a word or a play.
     *
     * @param question the exercise
     * @return such as {@code 8/5 6/5} or {@code Take}
     */
    public static String best(Exercise question) {
        if (question instanceof PlayExercise) {
            return ((PlayExercise) question).best().play().toString();
        }
        CubeExercise cube = (CubeExercise) question;
        return choice(cube, cube.best());
    }

    /**
     * What the weaker player does.
     *
     * @param question the exercise
     * @return likewise
     */
    public static String weak(Exercise question) {
        if (question instanceof PlayExercise) {
            return ((PlayExercise) question).weak().play().toString();
        }
        CubeExercise cube = (CubeExercise) question;
        return choice(cube, cube.weak());
    }

    /**
     * A choice of the cube, with a capital letter.
     *
     * @param question the exercise
     * @param action the choice
     * @return such as {@code Take} or {@code Redouble}
     */
    public static String choice(CubeExercise question, CubeAction action) {
        boolean again = action == CubeAction.DOUBLE && question.cube().owner() != CubeOwner.CENTRE;
        String word = again ? "redouble" : CubeWords.action(action);
        return Character.toUpperCase(word.charAt(0)) + word.substring(1);
    }

    /**
     * What the weaker player gives away.
     *
     * @param question the exercise
     * @param name the weaker player
     * @return a sentence
     */
    public static String mistake(Exercise question, String name) {
        return name + " chooses " + weak(question) + ", which gives away " + Numbers.size(-question.cost()) + ": "
                + Grade.ofCost(question.cost()).word() + ".";
    }

    /**
     * A heading for the reasons of the answer.
     *
     * @param question the exercise
     * @return such as {@code Why 8/5 6/5?}
     */
    public static String whyBest(Exercise question) {
        return "Why " + best(question) + "?";
    }

    /**
     * A heading for the reasons against the weaker player's choice.
     *
     * @param question the exercise
     * @return such as {@code Why not 13/10 6/5?}
     */
    public static String whyNot(Exercise question) {
        return "Why not " + weak(question) + "?";
    }

    /**
     * More about the answer.
     *
     * @param question the exercise
     * @return a sentence or two, or nothing
     */
    public static String remark(Exercise question) {
        if (question instanceof PlayExercise) {
            return "";
        }
        CubeExercise cube = (CubeExercise) question;
        StringJoiner remark = new StringJoiner(" ");
        if (!cube.answering()) {
            remark.add(
                    cube.values().tooGood()
                            ? "Playing on is worth more than the pass would give."
                            : "If doubled, the opponent should "
                                    + CubeWords.action(cube.values().answer()) + ".");
        }
        if (cube.stakes() instanceof MatchStakes) {
            // Only such questions are asked at a score.
            remark.add("In money play the answer would be " + CubeWords.action(cube.worse()) + ".");
        }
        return remark.toString();
    }

    /**
     * A word of caution where points are played for money.
     *
     * @param report the exercises
     * @return a sentence, or nothing
     */
    public static String caution(DrillReport report) {
        boolean money = report.questions().stream()
                .anyMatch(question ->
                        question instanceof CubeExercise && ((CubeExercise) question).stakes() instanceof MoneyStakes);
        return money ? CubeWords.CAUTION : "";
    }
}
