package org.pipwright.engine.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

class RecordTextTest {
    private static final String SMALL = "pipwright record 1\n"
            + "players: Ada, Ben\n"
            + "match: 3\n"
            + "event: Evening class\n"
            + "# two games\n"
            + "\n"
            + "game 1: 0-0\n"
            + "Ada 3-1: 8/5 6/5\n"
            + "Ben 6-2: 24/18 13/11  # runs\n"
            + "Ada doubles\n"
            + "Ben passes\n"
            + "\n"
            + "game 2: 1-0\n"
            + "# Ben starts\n"
            + "Ben 6-5: 24/13\n"
            + "Ada resigns gammon\n";

    @Test
    void theSmallRecordIsReadAndPrintedAsItIs() {
        GameRecord record = RecordText.parse(SMALL);
        assertEquals(SMALL, RecordText.print(record));
        assertEquals(1, record.games().get(0).points());
        assertEquals(-2, record.games().get(1).points());
        assertEquals(1, record.points(0));
        assertEquals(2, record.points(1));
    }

    @Test
    void whatPeopleTypeIsRead() {
        String typed = "\ufeff  pipwright record 1  \r\n"
                + "Players:  Ada ,Ben # both new\r\n"
                + "match:3\r\nEvent: Evening   class\r\n"
                + "# two games\r\n"
                + "game\r\n\r\n"
                + "Ada 31 6/5,8/5\r\n"
                + "\tBen\t62: 13/11 24/18 #runs\r\n"
                + "Ada doubles\r\n"
                + "Ben PASSES\r\n"
                + "game 2\r\n"
                + "#   Ben starts\r\n"
                + "Ben 5-6 24/18/13\r\n"
                + "Ada resigns gammon\r\n\r\n";
        assertEquals(SMALL.replace("# two", "# both new\n# two"), RecordText.print(RecordText.parse(typed)));
    }

    /** Reading what was printed gives the same record; the points agree with accounts kept apart. */
    @Test
    void recordsComeBackAsTheyWere() {
        RandomRecords random = new RandomRecords(21);
        int games = 0;
        for (int i = 0; i < 60; i++) {
            GameRecord record = random.next();
            games += record.games().size();
            assertEquals(random.points[0], record.points(0));
            assertEquals(random.points[1], record.points(1));
            String text = RecordText.print(record);
            GameRecord back = RecordText.parse(text);
            assertEquals(record, back);
            assertEquals(text, RecordText.print(back));
        }
        assertTrue(
                games > 100 && random.doubles > 100 && random.passes > 20 && random.resignations > 20,
                () -> random.doubles + " doubles, " + random.passes + " passes, " + random.resignations
                        + " resignations");
    }

    /** Every record may stop after any line; what is there is read. */
    @Test
    void aRecordMayStopAnywhere() {
        String text = RecordText.print(new RandomRecords(22).next());
        String[] lines = text.split("\n");
        StringBuilder head = new StringBuilder();
        for (int i = 0; i < lines.length; i++) {
            head.append(lines[i]).append('\n');
            if (i >= 2) {
                String part = head.toString();
                assertEquals(
                        part.strip(), RecordText.print(RecordText.parse(part)).strip());
            }
        }
    }

    /** Lines are put after those of a short match: {@code ;} ends a line. */
    @ParameterizedTest
    @CsvFileSource(resources = "mistakes.txt", delimiter = '|', quoteCharacter = '~')
    void aMistakeIsToldWithPlaceAndMending(String lines, String message) {
        String text = "pipwright record 1\n" + lines.strip().replaceAll(" *; *", "\n");
        InvalidRecordException e = assertThrows(InvalidRecordException.class, () -> RecordText.parse(text));
        assertEquals(message.strip(), e.getMessage());
        assertTrue(e.getMessage().startsWith("line " + e.line() + ", column " + e.column() + ": "));
    }

    /** All of C0 and C1 but the tab, which is a blank, and what ends lines. */
    @Test
    void controlCharactersAreRefusedWhereTheyStand() {
        String before = "pipwright record 1\nplayers: Ada, Ben\nmatch: 3\n# not";
        int tried = 0;
        for (char c = 0; c < 0xa0; c++) {
            if ((c < 0x20 || c >= 0x7f) && "\t\n\r".indexOf(c) < 0) {
                String text = before + c + "e\n";
                InvalidRecordException e = assertThrows(InvalidRecordException.class, () -> RecordText.parse(text));
                assertEquals("line 4, column 6: a control character: expected text", e.getMessage());
                tried++;
            }
        }
        assertEquals(62, tried);
        assertEquals(RecordText.parse(before + " e\n"), RecordText.parse(before + "\te\n"));
    }

    @Test
    void anIllegalPlayIsAnsweredWithAllLegalOnes() {
        String text = "pipwright record 1\nplayers: Ada, Ben\nmatch: 3\ngame 1\nAda 6-5: 24/14\n";
        InvalidRecordException e = assertThrows(InvalidRecordException.class, () -> RecordText.parse(text));
        assertEquals(5, e.line());
        assertEquals(10, e.column());
        assertTrue(e.getMessage().contains("expected a legal play of 6-5: "), e.getMessage());
        for (Play play : Plays.legal(Position.start(), Roll.of(6, 5))) {
            assertTrue(e.getMessage().contains(play.toString()), play + " in " + e.getMessage());
        }
    }
}
