package org.pipwright.engine.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** All mistakes of a record at once. */
class RecordCheckTest {
    private static final String HEADING = "pipwright record 1\nplayers: Ada, Lena\n";

    private static List<String> faults(String text) {
        return RecordCheck.of(text).faults().stream()
                .map(fault -> fault.error().getMessage())
                .collect(Collectors.toList());
    }

    private static void assertFaults(String text, String... beginnings) {
        List<String> faults = faults(text);
        assertEquals(beginnings.length, faults.size(), faults.toString());
        for (int i = 0; i < beginnings.length; i++) {
            assertTrue(faults.get(i).startsWith(beginnings[i]), faults.get(i) + " begins with " + beginnings[i]);
        }
    }

    /** A near name, a roll that the play contradicts and a word that nobody says do not hide what follows them. */
    @Test
    void whatFollowsAMistakeIsHeldAgainstTheRulesToo() {
        assertFaults(
                HEADING + "match: 5\n\ngame 1\nAda 2-1: 8/5 6/5\nlena 6-2: 24/18 13/11\nAda 4-3: 13/5\nLena dubles\n"
                        + "Ada 9-9: 1/2\nBob 3-1: 8/5\n\ngame 2: 1-0\nLena 6-5: 24/13\nLena 4-3: 13/6\n",
                "line 6, column 10: 8/5 6/5 is 3 and 1 pips: the roll 2-1",
                "line 7, column 1: 'lena 6-2: 24/18 13/11' (did you mean Lena?): expected a line that begins with Ada",
                "line 8, column 10: ",
                "line 9, column 6: 'dubles': expected a roll",
                "line 10, column 5: ",
                "line 11, column 1: 'Bob 3-1: 8/5': expected a line that begins with Ada or Lena, or 'game'",
                "line 15, column 6: Lena rolls out of turn: expected Ada to roll or double");
    }

    /** Behind a play that no roll makes, nothing is said of plays up to the next game. */
    @Test
    void whatCannotBeKnownIsNotTold() {
        assertFaults(
                HEADING + "money: jacoby\ngame 1\nAda 3-1: 8/5 24/5\nAda 3-1: 8/5 24/5\nLena takes\n"
                        + "game 2\nAda 3-1: 8/5 6/4\nLena resigns\ngame 3: 0-1\nLena 6-6: 24/18\n",
                "line 5, column 10: ",
                "line 9, column 10: ",
                "line 11, column 9: the score 0-1: expected 1-0",
                "line 12, column 6: a game begins with two different dice");
    }

    /** Found by fuzzing. */
    @Test
    void remarksBehindAFirstGameThatDoesNotBeginAreNoMistake() {
        assertFaults(HEADING + "match: 5\ngame 1: 0-n\n# well\nAda 3-1: 8/5 6/5 # played\n", "line 4, column ");
    }

    @Test
    void aHeadingAtFaultEndsIt() {
        assertFaults(
                "pipwright record 1\nplayers: Ada\nmatch: x\nplace: home\ngame 1\nAda 3-1: 8/5 6/5\n",
                "line 2, column 1: ",
                "line 3, column 1: ");
        assertFaults("pipwright record\nplayers: Ada\n", "line 1, column 1: ");
        assertFaults(HEADING, "line 3, column 1: no rules yet");
    }

    /** Near its end a match goes on by rules that a score does not tell, so cube actions are not held against them. */
    @Test
    void inAMatchTheScoreOfTheNextGameIsBelieved() {
        String lost = HEADING + "match: 5\ngame 1\nAda 3-1: 8/5 24/5\n";
        assertFaults(
                lost + "game 2: 2-0\nLena 6-5: 24/13\nLena 6-5: 24/13\n", "line 5", "line 8, column 6: Lena rolls out");
        assertFaults(lost + "game 2: 4-0\nLena 6-5: 24/13\nLena 6-5: 24/13\nLene 6-5: 24/13\n", "line 5", "line 9");
    }

    @Test
    void theStandBeforeTheMistakeIsTold() {
        RecordCheck.Fault fault = RecordCheck.of(
                        HEADING + "match: 5\ngame 1\nAda 3-1: 8/5 6/5\nLena 6-2: 24/18 13/12\n")
                .faults()
                .get(0);
        Position after =
                PlayText.parse("8/5 6/5", Position.start(), Roll.parse("3-1")).next();
        assertEquals(Optional.of(after), fault.stand().map(Stand::position));
        assertEquals(Optional.of(1), fault.stand().map(Stand::onRoll));
    }

    /** The first mistake is the one at which reading stops, whatever was damaged; without one, the record is the same. */
    @Test
    void theFirstMistakeIsThatOfReading() {
        RandomRecords records = new RandomRecords(3);
        SplittableRandom random = new SplittableRandom(3);
        int several = 0;
        for (int i = 0; i < 400; i++) {
            StringBuilder text = new StringBuilder(RecordText.print(records.next()));
            for (int k = random.nextInt(4); k > 0; k--) {
                text.setCharAt(random.nextInt(text.length()), "ab019 -/:#*\n\u0000".charAt(random.nextInt(13)));
            }
            RecordCheck check = RecordCheck.of(text.toString());
            several += check.faults().size() > 1 ? 1 : 0;
            try {
                assertEquals(Optional.of(RecordText.parse(text.toString())), check.record());
                assertEquals(List.of(), check.faults());
            } catch (InvalidRecordException e) {
                assertEquals(e.getMessage(), check.faults().get(0).error().getMessage());
                assertTrue(check.record().isEmpty());
            }
        }
        assertTrue(several > 50, several + " of 400 have several mistakes");
    }
}
