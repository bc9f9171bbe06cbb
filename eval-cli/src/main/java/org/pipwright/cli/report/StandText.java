package org.pipwright.cli.report;

import java.io.PrintWriter;
import java.util.Optional;
import org.pipwright.cli.picture.Scene;
import org.pipwright.cli.picture.View;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.record.Entry;
import org.pipwright.engine.record.Heading;
import org.pipwright.engine.record.Stand;

/** How a recorded game stands, as a board. */
public final class StandText {
    private StandText() {}

    /**
     * Prints a board and what stands beside it.
     *
     * @param heading the players
     * @param stand how the game stands
     * @param turn what was rolled and played then; empty if nothing was
     * @param unicode whether {@code ● ○} can be printed
     * @param out where to
     */
    public static void write(
            Heading heading, Stand stand, Optional<Entry.Turn> turn, boolean unicode, PrintWriter out) {
        int side = turn.map(Entry.Turn::side).orElse(stand.onRoll());
        out.println("game " + stand.number() + ": " + who(heading, stand, side));
        if (stand.over()) {
            return;
        }
        Scene scene = Scene.of(stand.position()).with(stand.cube());
        if (stand.stakes() instanceof MatchStakes match) {
            scene = scene.with(
                    side == stand.onRoll() ? match.score() : match.score().swapped());
        }
        if (turn.isPresent()) {
            scene = scene.with(turn.get().roll(), turn.get().play());
        }
        SceneText.write(scene, false, View.USUAL, unicode, out);
    }

    private static String who(Heading heading, Stand stand, int side) {
        if (stand.over()) {
            int points = Math.abs(stand.points());
            return heading.name(stand.points() > 0 ? 0 : 1) + " has won " + Phrases.count(points, "point");
        }
        boolean begun = stand.begun();
        return stand.offered()
                ? heading.name(stand.decides()) + " to answer a double of " + heading.name(stand.onRoll())
                : begun || side != stand.onRoll() ? heading.name(side) + " on roll" : "not begun";
    }
}
