package org.pipwright.engine.play;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;

/** Every reason why a play is refused, word for word. */
@Tag("fast")
class IllegalPlayTest {
    private static final String EXAMPLE = "write it like 8/5 6/5, 13/7*, bar/22, 6/off(2) or no play";

    private static String reason(String position, String roll, String text) {
        Position before = PositionText.parse(position);
        String reason = assertThrows(IllegalPlayException.class, () -> PlayText.parse(text, before, Roll.parse(roll)))
                .getMessage();
        assertFalse(reason.contains("\n"), reason);
        return reason;
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''|the play is empty:",
                "' , ;'|the play is empty:",
                "8-5 6-5|'8-5' is not a move of a checker:",
                "8/5 banana|'banana' is not a move of a checker:",
                "8/|'8/' is not a move of a checker:",
                "8*/5|'8*/5' is not a move of a checker:",
                "8/5**|'8/5**' is not a move of a checker:",
                "8/5()|'8/5()' is not a move of a checker:",
                "8/5(2)/2|'8/5(2)/2' is not a move of a checker:",
                "8/5(123)|'8/5(123)' is not a move of a checker:",
                "8/é|'8/é' is not a move of a checker:",
            })
    void textThatCannotBeRead(String text, String expected) {
        assertEquals(expected + " " + EXAMPLE, reason("start", "31", text));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "8/5 6/27|'27' in '6/27' is not a place: use points 1 to 24, bar or off",
                "8/x|'x' in '8/x' is not a place: use points 1 to 24, bar or off",
                "8/999|'999' in '8/999' is not a place: use points 1 to 24, bar or off",
                "8/5(0)|'8/5(0)' counts 0 checkers: a roll moves one to four",
                "8/5(9)|'8/5(9)' counts 9 checkers: a roll moves one to four",
                "5/8|5/8 goes the wrong way: a checker moves to a lower point of its own side",
                "8/8|8/8 goes the wrong way: a checker moves to a lower point of its own side",
                "off/3|off/3 goes the wrong way: a checker moves to a lower point of its own side",
                "6/bar|6/bar goes the wrong way: a checker moves to a lower point of its own side",
            })
    void placesAndCountsThatCannotBe(String text, String expected) {
        assertEquals(expected, reason("start", "31", text));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "31|13/8|13/8 is 5 pips: the roll 3-1 plays one 3 and one 1",
                "33|13/8|13/8 is 5 pips: the roll 3-3 plays up to four 3s",
                "33|24/9|24/9 is 15 pips: the roll 3-3 plays up to four 3s",
                "31|6/off|6/off is 6 pips: the roll 3-1 plays one 3 and one 1",
                "31|8/5 13/10|8/5 13/10 is 3 and 3 pips: the roll 3-1 plays one 3 and one 1",
                "31|8/4 6/5|8/4 6/5 is 4 and 1 pips: the roll 3-1 plays one 3 and one 1",
                "31|8/5 6/5 6/5|8/5 6/5 6/5 is 3 and 1 and 1 pips: the roll 3-1 plays one 3 and one 1",
                "33|13/7(2) 8/5|13/7 13/7 8/5 is 6 and 6 and 3 pips: the roll 3-3 plays up to four 3s",
            })
    void notThatRoll(String roll, String text, String expected) {
        assertEquals(expected, reason("start", roll, text));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "start|51|24/19|24/19 is blocked: the opponent holds point 19",
                "start|51|6/5 24/19|24/19 is blocked: the opponent holds point 19",
                "start|61|24/18/17|18/17 is blocked: the opponent holds point 17",
                "start|66|24/12|24/12 is blocked: the opponent holds point 12",
                "start|52|24/17|24/17 is blocked: the opponent holds point 17",
                "start|31|7/4 6/5|7/4 has no checker to move: none is on point 7",
                "start|33|24/21(3) 8/5|24/21 is written more often than there are checkers: point 24 has 2",
                "5@6 / 2@5|31|bar/22 6/5|bar/22 has no checker to move: none is on the bar",
                "5@6 1@bar / 2@4 9@6|31|bar/22(2)|bar/22 bar/22 is 3 and 3 pips: the roll 3-1 plays one 3 and one 1",
                "5@6 1@bar / 2@4 9@6|33|bar/22(2)|bar/22 is written more often than there are checkers: the bar has 1",
                "3@13 / 2@15 2@14 9@6|32|13/8|13/8 is blocked: the opponent holds points 10 and 11; this roll has no"
                        + " legal play: write no play",
            })
    void blockedOrNoChecker(String position, String roll, String text, String expected) {
        assertEquals(expected, reason(position, roll, text));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "5@6 1@bar / 2@4 9@6|31|6/5 6/3|6/5 has to wait: a checker is still on the bar and must enter first",
                "5@6 2@bar / 2@4 9@6|31|bar/22 6/5|6/5 has to wait: a checker is still on the bar and must enter first",
                "5@6 1@bar / 2@3 2@5|31|bar/22 6/5|bar/22 is blocked: the opponent holds point 22",
                "5@6 1@bar / 2@3 2@1|31|bar/22 6/5|bar/22 is blocked: the opponent holds point 22; this roll has no"
                        + " legal play: write no play",
            })
    void stillOnTheBar(String position, String roll, String text, String expected) {
        assertEquals(expected, reason(position, roll, text));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "3@5 2@7 / 2@1|61|7/6 5/off|5/off has to wait: not all checkers are home, the last is on 7",
                "3@5 2@13 / 2@1|52|5/off 13/11|5/off has to wait: not all checkers are home, the last is on 13",
                "3@5 2@4 2@2 / 2@6|62|4/off 5/3|4/off is not allowed: a 6 bears off from the highest point, and a"
                        + " checker is on 5",
                "3@5 2@4 2@2 / 2@6|62|2/off(2)|2/off is not allowed: a 6 bears off from the highest point, and a"
                        + " checker is on 5",
            })
    void notReadyToBearOff(String position, String roll, String text, String expected) {
        assertEquals(expected, reason(position, roll, text));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "start|31|8/5|a longer play exists: both dice can be played, as in 8/4",
                "start|31|no play|a longer play exists: both dice can be played, as in 6/2",
                "start|33|8/5(2)|a longer play exists: 4 steps can be played, as in 24/21(2) 8/5(2)",
                "1@24 / 2@10 1@9|61|24/23|a longer play exists: both dice can be played, as in 24/17",
                "1@20 / 7@11|42|no play|a longer play exists: a checker can move, as in 20/16",
                "1@24 / 2@8 2@9|61|24/23|the larger die must be played if only one can be: play the 6, as in 24/18",
                "1@20 / 7@11|42|20/18|the larger die must be played if only one can be: play the 4, as in 20/16",
            })
    void notAllThatCanBePlayed(String position, String roll, String text, String expected) {
        assertEquals(expected, reason(position, roll, text));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "start|31|8/5* 6/5|nothing is hit on 5: leave the star out",
                "start|66|13/7*(2) 24/18*(2)|nothing is hit on 7 and 18: leave the star out",
                "2@6 / 2@1|66|6/off*(2)|nothing is hit on off: leave the star out",
                "3@13 / 1@15 9@6|32|13/10*/8*|nothing is hit on 8: leave the star out",
                "3@13 / 1@15 1@14 9@6|32|13/8|the play can be read as 13/10*/8 or as 13/11*/8: write the point on the"
                        + " way",
                "off / 1@6|31|6/2|the game is over: no roll follows",
            })
    void starsWithoutAHitAndTextWithTwoMeanings(String position, String roll, String text, String expected) {
        assertEquals(expected, reason(position, roll, text));
    }

    @ParameterizedTest
    @ValueSource(strings = {"8/5 ", "/", "(", "*", " ", "1", "8/5/"})
    void aHugeTextIsRefusedShortly(String piece) {
        String reason = reason("start", "31", piece.repeat(300_000));
        assertTrue(reason.startsWith("the play has " + 300_000 * piece.length() + " characters, at most 200"), reason);
    }

    /** Single quotes stand for double ones. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '^',
            value = {
                "{}|the play has no 'steps': give [] if no checker moves",
                "[]|the play should be an object (line 1, column",
                "{'steps':{}}|steps should be an array (line 1, column",
                "{'step':[]}|'step' is not known in the play: use steps",
                "{'steps':[],'steps':[]}|'steps' is twice in the play: give it once",
                "{'steps':[7]}|a step should be an object (line 1, column",
                "{'steps':[{}]}|a step needs 'from' and 'to'",
                "{'steps':[{'from':8}]}|a step needs 'from' and 'to'",
                "{'steps':[{'from':8,'to':5,'hits':true}]}|'hits' is not known in a step: use from, to and hit",
                "{'steps':[{'from':8,'to':5,'hit':1}]}|hit should be true or false (line 1, column",
                "{'steps':[{'from':26,'to':5}]}|from is 26: use 1 to 25",
                "{'steps':[{'from':8,'to':-1}]}|to is -1: use 0 to 24",
                "{'steps':[{'from':'bar','to':22}]}|from should be a whole number (line 1, column",
                "{'steps':[{'from':5,'to':8}]}|5/8 goes the wrong way",
                "{'steps':[{'from':8,'to':5},|the text is not JSON (line 1, column",
                "{'steps':[{'from':8,'to':5},{'from':8,'to':5},{'from':8,'to':5},{'from':8,'to':5},{'from':8,'to':5}]}|"
                        + "steps has more than 4 elements: use at most 4",
                "{'steps':[]} []|something follows the JSON value",
                "{'steps':[]}|a longer play exists: both dice can be played, as in 6/2",
                "{'steps':[{'from':8,'to':5,'hit':true},{'from':6,'to':5}]}|nothing is hit on 5: leave the star out",
            })
    void faultsInJson(String text, String expected) {
        String json = text.replace('\'', '"');
        String reason = assertThrows(
                        IllegalPlayException.class, () -> PlayJson.parse(json, Position.start(), Roll.of(3, 1)))
                .getMessage();
        assertTrue(reason.startsWith(expected), reason);
        assertFalse(reason.contains("\n"), reason);
    }
}
