package org.pipwright.cli.picture;

import java.util.SortedSet;
import java.util.StringJoiner;
import java.util.stream.Collectors;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.score.MatchScore;

/** A scene in words, for those who do not see the picture. */
public final class Description {
    private Description() {}

    /**
     * Describes a scene.
     *
     * @param scene the scene
     * @return one line
     */
    public static String of(Scene scene) {
        StringJoiner words = new StringJoiner("; ");
        words.add("Backgammon position " + scene.position() + (scene.played() ? ", opponent on roll" : ""));
        if (scene.roll() != null) {
            words.add("to play " + scene.roll());
        }
        if (scene.play() != null) {
            words.add("play " + scene.play());
        }
        if (scene.cube() != null) {
            words.add(cube(scene.cube()));
        }
        if (scene.score() != null) {
            words.add(score(scene.score()));
        }
        if (!scene.marks().isEmpty()) {
            words.add(marks(scene.marks()));
        }
        return words.toString();
    }

    /**
     * A cube in words.
     *
     * @param cube the cube, seen from the side on roll
     * @return such as {@code cube at 2, owned by the opponent}
     */
    public static String cube(CubeState cube) {
        switch (cube.owner()) {
            case ME:
                return "cube at " + cube.value() + ", owned by the side on roll";
            case THEM:
                return "cube at " + cube.value() + ", owned by the opponent";
            default:
                return "cube at " + cube.value() + ", centred";
        }
    }

    /**
     * A score in words.
     *
     * @param score the score, seen from the side on roll
     * @return such as {@code 3 away against 5 away}
     */
    public static String score(MatchScore score) {
        return score.mine() + " away against " + score.theirs() + " away" + (score.crawford() ? ", Crawford game" : "");
    }

    /**
     * Highlighted points in words.
     *
     * @param marks the points, at least one
     * @return such as {@code marked points 5, 20}
     */
    public static String marks(SortedSet<Integer> marks) {
        return marks.stream()
                .map(String::valueOf)
                .collect(Collectors.joining(", ", marks.size() == 1 ? "marked point " : "marked points ", ""));
    }
}
