package org.pipwright.engine.record;

import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.roll.Roll;

/** What could have been played, for whoever wrote something else. */
final class LegalPlays {
    /** Doubles can have hundreds of plays; the line should stay readable. */
    private static final int SHOWN = 24;

    private LegalPlays() {}

    static String of(Referee referee, Roll roll) {
        List<String> plays = Plays.legal(referee.position(), roll).stream()
                .map(PlayText::print)
                .collect(Collectors.toList());
        String shown = plays.stream().limit(SHOWN).collect(Collectors.joining(", "));
        return "a legal play of " + roll + ": " + shown
                + (plays.size() > SHOWN ? " and " + (plays.size() - SHOWN) + " more" : "");
    }
}
