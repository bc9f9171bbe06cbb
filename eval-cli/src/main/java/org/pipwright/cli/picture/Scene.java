package org.pipwright.cli.picture;

import java.util.Collections;
import java.util.Objects;
import java.util.SortedSet;
import java.util.TreeSet;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.score.MatchScore;

/**
 * What a picture shows. Everything is seen from the side on roll; what is null is left out.
 *
 * @param position the position
 * @param cube the cube, or null
 * @param score the match score, or null
 * @param roll the dice, or null
 * @param play a play of that roll to show as arrows, or null
 * @param played whether that side has just moved, so that the other one is on roll now
 * @param marks points to highlight, 1 to 24
 * @param title a heading, or null
 */
public record Scene(
        Position position,
        CubeState cube,
        MatchScore score,
        Roll roll,
        Play play,
        boolean played,
        SortedSet<Integer> marks,
        String title) {
    /**
     * Checks what must be there.
     *
     * @param position the position
     * @param cube the cube, or null
     * @param score the match score, or null
     * @param roll the dice, or null
     * @param play a play of that roll, or null
     * @param played whether that side has just moved
     * @param marks points to highlight
     * @param title a heading, or null
     */
    public Scene {
        Objects.requireNonNull(position);
        marks = Collections.unmodifiableSortedSet(new TreeSet<>(marks));
        if (play != null && roll == null) {
            throw new IllegalArgumentException("a play needs its roll");
        }
        if (!marks.isEmpty() && (marks.first() < 1 || marks.last() > 24)) {
            throw new IllegalArgumentException("points are 1 to 24");
        }
    }

    /**
     * A position and nothing else.
     *
     * @param position the position
     * @return the scene
     */
    public static Scene of(Position position) {
        return new Scene(position, null, null, null, null, false, new TreeSet<>(), null);
    }

    /**
     * The same scene with a cube.
     *
     * @param shown the cube
     * @return the scene
     */
    public Scene with(CubeState shown) {
        return new Scene(position, shown, score, roll, play, played, marks, title);
    }

    /**
     * The same scene at a score.
     *
     * @param shown the score
     * @return the scene
     */
    public Scene with(MatchScore shown) {
        return new Scene(position, cube, shown, roll, play, played, marks, title);
    }

    /**
     * The same scene with a roll, and perhaps a play of it.
     *
     * @param rolled the dice
     * @param chosen the play, or null
     * @return the scene
     */
    public Scene with(Roll rolled, Play chosen) {
        return new Scene(position, cube, score, rolled, chosen, played, marks, title);
    }

    /**
     * The same scene with highlighted points.
     *
     * @param points 1 to 24
     * @return the scene
     */
    public Scene marked(SortedSet<Integer> points) {
        return new Scene(position, cube, score, roll, play, played, points, title);
    }

    /**
     * The same scene with a heading.
     *
     * @param heading the heading
     * @return the scene
     */
    public Scene titled(String heading) {
        return new Scene(position, cube, score, roll, play, played, marks, heading);
    }

    /**
     * The same scene with the opponent on roll, seen from the side that waits.
     *
     * @return the scene without a roll
     */
    public Scene waiting() {
        return new Scene(position, cube, score, null, null, true, marks, title);
    }

    /**
     * What the play leads to, seen from the side that has played.
     *
     * @return the scene without dice and arrows
     */
    public Scene after() {
        return new Scene(play.result(), cube, score, null, null, true, marks, title);
    }
}
