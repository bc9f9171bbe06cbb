package org.pipwright.cli.drill;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntUnaryOperator;
import org.pipwright.cli.picture.Description;
import org.pipwright.cli.picture.Scene;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/** A board in words, for those who do not see it. All points are numbered from the side that is addressed. */
public final class BoardWords {
    private BoardWords() {}

    /**
     * A board in words.
     *
     * @param scene what is shown
     * @return a sentence, addressed to the side from which it is seen
     */
    public static String of(Scene scene) {
        return of(scene, true);
    }

    /**
     * A board in words.
     *
     * @param scene what is shown
     * @param pips whether the pips are told too; if not, they are to be counted
     * @return a sentence, addressed to the side from which it is seen
     */
    public static String of(Scene scene, boolean pips) {
        Position position = scene.position();
        List<String> sentences = new ArrayList<>();
        sentences.add("You have " + checkers(position::count, point -> point));
        sentences.add("your opponent has " + checkers(position.swapped()::count, point -> 25 - point));
        if (pips) {
            sentences.add("pips " + position.pips() + " against " + position.opponentPips());
        }
        if (scene.roll() != null) {
            sentences.add("you have rolled " + scene.roll());
        }
        if (scene.play() != null) {
            sentences.add("the arrows show " + scene.play());
        }
        if (scene.cube() != null) {
            sentences.add(cube(scene));
        }
        if (scene.score() != null) {
            sentences.add(Description.score(scene.score()));
        }
        return String.join("; ", sentences) + ".";
    }

    /** The cube's owner is addressed too. */
    private static String cube(Scene scene) {
        switch (scene.cube().owner()) {
            case ME:
                return "you own the cube at " + scene.cube().value();
            case THEM:
                return "your opponent owns the cube at " + scene.cube().value();
            default:
                return "the cube is centred at " + scene.cube().value();
        }
    }

    private static String checkers(IntUnaryOperator counts, IntUnaryOperator name) {
        List<String> stacks = new ArrayList<>();
        if (counts.applyAsInt(Planes.BAR) > 0) {
            stacks.add(counts.applyAsInt(Planes.BAR) + " on the bar");
        }
        for (int point = 24; point >= 1; point--) {
            if (counts.applyAsInt(point) > 0) {
                stacks.add(counts.applyAsInt(point) + " on " + name.applyAsInt(point));
            }
        }
        if (counts.applyAsInt(Planes.OFF) > 0) {
            stacks.add(counts.applyAsInt(Planes.OFF) + " borne off");
        }
        return String.join(", ", stacks);
    }
}
