package org.pipwright.engine.position;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.play.RandomWalk;

class PositionJsonTest {
    private static final String SIDE = "{\"points\":{\"6\":5,\"8\":3,\"13\":5,\"24\":2},\"bar\":0,\"off\":0}";

    private static final String START = "{\"checkers\":15,\"me\":" + SIDE + ",\"opponent\":" + SIDE + "}";

    @Test
    void theStartPrintsInOneForm() {
        assertEquals(START, PositionJson.print(Position.start()));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 7, 15})
    void printThenParseGivesThePosition(int checkers) {
        for (Position position : new RandomWalk(checkers, 44).next(3000)) {
            String text = PositionJson.print(position);
            assertEquals(position, PositionJson.parse(text), text);
            assertEquals(text, PositionJson.print(PositionText.parse(PositionText.print(position))));
        }
    }

    @Test
    void whatFollowsFromTheRestMayBeLeftOut() {
        String text = " {\"opponent\": {\"points\": {}, \"bar\": 2},\n \"me\": {\"points\": {\"3\": 2}}} ";
        assertEquals(PositionText.parse("2@3 / 2@bar"), PositionJson.parse(text));
    }

    /** Single quotes stand for double ones. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '^',
            value = {
                "^^|the JSON text ends where the position should be: expected an object",
                "[]|the position should be an object (line 1, column",
                "null|the position should be an object",
                "{}|the position has no 'me': give both sides",
                "{'me':{'points':{}}}|the position has no 'opponent': give both sides",
                "{'me':{},'opponent':{'points':{}}}|the side on roll has no 'points': give {} if there is none",
                "{'me':7}|the side on roll should be an object",
                "{'mine':{}}|'mine' is not known in the position: use checkers, me and opponent",
                "{'me':{'point':{}}}|'point' is not known in the side on roll: use points, bar and off",
                "{'me':{'points':{}},'me':{'points':{}}}|'me' is twice in the position: give it once",
                "{'me':{'points':{'6':1,'6':1}}}|'6' is twice in points of the side on roll: give it once",
                "{'me':{'points':{'0':1}}}|'0' is not known in points of the side on roll: use \"1\" to \"24\"",
                "{'me':{'points':{'25':1}}}|'25' is not known in points of the side on roll",
                "{'me':{'points':{'06':1}}}|'06' is not known in points of the side on roll",
                "{'me':{'points':{'6':0}}}|point 6 of the side on roll is 0: use 1 to 15",
                "{'me':{'points':{'6':16}}}|point 6 of the side on roll is 16: use 1 to 15",
                "{'me':{'points':{'6':-1}}}|point 6 of the side on roll is -1: use 1 to 15",
                "{'me':{'points':{'6':1.5}}}|point 6 of the side on roll should be a whole number",
                "{'me':{'points':{'6':'1'}}}|point 6 of the side on roll should be a whole number",
                "{'me':{'points':{'6':99999999999999999999}}}|point 6 of the side on roll is 99999999999999999999: use",
                "{'me':{'points':{'6':-99999999999999999999}}}|point 6 of the side on roll is -99999999999999999999",
                "{'me':{'points':{},'bar':true}}|bar of the side on roll should be a whole number",
                "{'checkers':16}|checkers is 16: use 1 to 15",
                "{'me':{'points':{'6':9,'5':9}},'opponent':{'points':{}}}|has 18 checkers on the board: at most 15",
                "{'me':{'points':{'6':2},'off':2},'opponent':{'points':{}}}|2 checkers on the board and 2 off",
                "{'me':{'points':{'6':2}},'opponent':{'points':{'19':2}}}|both sides have checkers on one point",
                "{'me':{'points':{}},'opponent':{'points':{}}}|both sides have borne off every checker",
                "{'me':{'points':{'6':2}},'opponent':{'points':{'1':2}}} 7|something follows the JSON value",
                "{'me':{'points':{'6':2}},'opponent':{'points':{'1':2}}} x|the text is not JSON (line 1",
                "{'me' {|the text is not JSON (line 1",
                "{'me':{'points'|the text is not JSON (line 1",
                "{'me':{'points':{'6':01}}}|the text is not JSON (line 1",
            })
    void aFaultIsNamedInOneLine(String text, String expected) {
        String json = text.replace('\'', '"');
        InvalidPositionException fault = assertThrows(InvalidPositionException.class, () -> PositionJson.parse(json));
        assertTrue(fault.getMessage().contains(expected), fault.getMessage());
        assertFalse(fault.getMessage().contains("\n"), fault.getMessage());
    }

    @ParameterizedTest
    @ValueSource(strings = {"[", "{\"me\":", " ", "9", "\""})
    void aHugeTextIsRefusedShortly(String piece) {
        for (int times : new int[] {1_000, 500_000}) {
            InvalidPositionException fault =
                    assertThrows(InvalidPositionException.class, () -> PositionJson.parse(piece.repeat(times)));
            assertTrue(fault.getMessage().length() < 250, fault.getMessage());
            assertFalse(fault.getMessage().contains("\n"), fault.getMessage());
        }
    }
}
