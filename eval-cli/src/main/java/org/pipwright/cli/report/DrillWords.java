package org.pipwright.cli.report;

import java.util.StringJoiner;
import org.pipwright.cli.picture.Scene;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubelessStakes;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.drill.CubeExercise;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.drill.Origin;
import org.pipwright.engine.drill.PlayExercise;
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
     * What is played for; empty where the cube is left out.
     *
     * @param question the exercise
     * @return a few words
     */
    public static String stakes(Exercise question) {
        Stakes stakes = question.stakes();
        if (stakes instanceof CubelessStakes) {
            return "";
        }
        if (stakes instanceof MoneyStakes) {
            String money = CubeWords.money((MoneyStakes) stakes);
            return Character.toUpperCase(money.charAt(0)) + money.substring(1);
        }
        MatchScore score = score(question);
        return "Match: you need " + points(score.mine()) + ", your opponent " + score.theirs()
                + (score.crawford() ? ", Crawford game" : "");
    }

    private static String points(int points) {
        return points + (points == 1 ? " point" : " points");
    }

    /** Whether the side that is asked is not the one on roll. */
    private static boolean answering(Exercise question) {
        return question instanceof CubeExercise && ((CubeExercise) question).answering();
    }

    /** The score as the side that is asked sees it; null without a match. */
    private static MatchScore score(Exercise question) {
        if (!(question.stakes() instanceof MatchStakes)) {
            return null;
        }
        MatchScore score = ((MatchStakes) question.stakes()).score();
        return answering(question) ? score.swapped() : score;
    }

    /**
     * What is shown.
     *
     * @param question the exercise
     * @return the scene, seen from the side that is asked
     */
    public static Scene scene(Exercise question) {
        boolean answering = answering(question);
        Scene scene = Scene.of(answering ? question.position().swapped() : question.position());
        if (!(question.stakes() instanceof CubelessStakes)) {
            scene = scene.with(answering ? question.cube().swapped() : question.cube());
        }
        if (score(question) != null) {
            scene = scene.with(score(question));
        }
        if (question instanceof PlayExercise) {
            return scene.with(((PlayExercise) question).roll(), null);
        }
        return answering ? scene.waiting() : scene;
    }

    /**
     * What is shown with the answer.
     *
     * @param question the exercise
     * @return the scene with the best play as arrows
     */
    public static Scene solved(PlayExercise question) {
        return scene(question).with(question.roll(), question.best().play());
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
     * The weaker choice.
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
     * Who made the weaker choice.
     *
     * @param question the exercise
     * @return a few words for a table; empty where nobody did
     */
    public static String chooser(Exercise question) {
        return DrillOrigin.chooser(question);
    }

    /**
     * The line of a file that the exercise was taken from.
     *
     * @param question the exercise
     * @return such as {@code mine.txt, line 4}; empty for exercises from games
     */
    public static String line(Exercise question) {
        return DrillOrigin.line(question);
    }

    /**
     * What the weaker choice gives away, and who made it.
     *
     * @param question the exercise
     * @return a sentence
     */
    public static String mistake(Exercise question) {
        return DrillOrigin.mistake(question, weak(question));
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
     * A heading for the reasons against the weaker choice.
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
        if (cube.stakes() instanceof MatchStakes && cube.origin() instanceof Origin.OwnGame) {
            // Only such questions are taken from games of the drill's own.
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
        boolean money = report.questions().stream().anyMatch(question -> question.stakes() instanceof MoneyStakes);
        return money ? CubeWords.CAUTION : "";
    }
}
