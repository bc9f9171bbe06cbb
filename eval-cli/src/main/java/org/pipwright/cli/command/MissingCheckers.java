package org.pipwright.cli.command;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.position.Position;

/**
 * Checkers that a position says are off though its others stand where they would hardly stand then: whoever typed it may
 * have left some out. One or two outside home are nothing strange, as long as both sides can still hit: they were hit
 * while the side bore off.
 */
final class MissingCheckers {
    private static final int HOME = 6;

    /** More than were hit in one bear-off, as a rule. */
    private static final int MANY = 3;

    private MissingCheckers() {}

    /** The questions to ask, one a side, on a line each; none as a rule. */
    static List<String> questions(Position position) {
        List<String> questions = new ArrayList<>();
        ask(position, "the side on roll", questions);
        ask(position.swapped(), "the opponent", questions);
        return questions;
    }

    private static void ask(Position side, String who, List<String> questions) {
        int off = side.borneOff();
        int outside = outside(side);
        boolean odd = side.contact() ? outside >= MANY : outside > 0;
        if (off > 0 && odd && !side.finished()) {
            int there = side.checkers() - off;
            questions.add(who + " has " + there + (there == 1 ? " checker" : " checkers") + ", so " + off
                    + (off == 1 ? " counts" : " count") + " as borne off, yet " + outside
                    + (outside == 1 ? " is" : " are") + " not home: "
                    + (off == 1 ? "was one" : "were some") + " left out?");
        }
    }

    private static int outside(Position side) {
        int outside = 0;
        for (int place = HOME + 1; place <= 25; place++) {
            outside += side.count(place);
        }
        return outside;
    }
}
