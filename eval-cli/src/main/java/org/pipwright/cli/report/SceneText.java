package org.pipwright.cli.report;

import java.io.PrintWriter;
import org.pipwright.cli.picture.Description;
import org.pipwright.cli.picture.Scene;
import org.pipwright.cli.picture.View;

/** A scene as characters: the board, and what it cannot show in lines below it. */
public final class SceneText {
    private SceneText() {}

    /**
     * Prints a scene.
     *
     * @param scene the scene
     * @param after whether to show the board after the play too
     * @param view how they are shown
     * @param unicode whether {@code ● ○} can be printed
     * @param out where to
     */
    public static void write(Scene scene, boolean after, View view, boolean unicode, PrintWriter out) {
        BoardText.write(scene.position(), view, unicode, out);
        String facts = facts(scene);
        if (!facts.isEmpty()) {
            out.println();
            facts.lines().forEach(out::println);
        }
        if (after) {
            out.println();
            out.println("after " + scene.play() + ", seen from the side that has moved:");
            BoardText.writeWaiting(scene.after().position(), view, unicode, out);
        }
    }

    private static String facts(Scene scene) {
        StringBuilder facts = new StringBuilder();
        if (scene.roll() != null) {
            facts.append("to play ").append(scene.roll());
            facts.append(scene.play() == null ? "\n" : ": " + scene.play() + "\n");
        }
        if (scene.cube() != null) {
            facts.append(Description.cube(scene.cube())).append('\n');
        }
        if (scene.score() != null) {
            facts.append(Description.score(scene.score())).append('\n');
        }
        if (!scene.marks().isEmpty()) {
            facts.append(Description.marks(scene.marks())).append('\n');
        }
        return facts.toString();
    }
}
