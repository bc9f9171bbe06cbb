package org.pipwright.engine.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

/** Texts with a few characters changed, dropped or doubled are read, or refused with a place: nothing else happens. */
class DamagedRecordsTest {
    private static final String CHARS = "abyz0159 -/:,#*()[];\\\n\t\r\u0000\u2028\u00e9\ufeffBWRC";
    private static final int ROUNDS = 1500;

    private static String damaged(String text, Random random) {
        StringBuilder changed = new StringBuilder(text);
        for (int i = 1 + random.nextInt(3); i > 0 && changed.length() > 0; i--) {
            int at = random.nextInt(changed.length());
            char c = CHARS.charAt(random.nextInt(CHARS.length()));
            switch (random.nextInt(4)) {
                case 0:
                    changed.deleteCharAt(at);
                    break;
                case 1:
                    changed.insert(at, c);
                    break;
                case 2:
                    changed.setCharAt(at, c);
                    break;
                default:
                    changed.setLength(at + random.nextInt(changed.length() - at));
            }
        }
        return changed.toString();
    }

    private static void damage(Function<GameRecord, String> print, Function<String, GameRecord> parse, long seed) {
        Random random = new Random(seed);
        RandomRecords records = new RandomRecords(seed);
        GameRecord record = records.next();
        int refused = 0;
        int read = 0;
        for (int i = 0; i < ROUNDS; i++) {
            if (i % 200 == 0) {
                record = records.next();
            }
            String text = damaged(print.apply(record), random);
            try {
                GameRecord back = parse.apply(text);
                read++;
                assertEquals(back, RecordText.parse(RecordText.print(back)), text);
            } catch (InvalidRecordException e) {
                refused++;
                assertEquals(1, e.getMessage().lines().count(), e.getMessage());
                assertTrue(e.line() >= 1
                        && e.line()
                                <= 1
                                        + text.chars()
                                                .filter(c -> c == '\n' || c == '\r')
                                                .count());
                assertTrue(e.column() >= 1, e.getMessage());
            }
        }
        int both = Math.min(refused, read);
        assertTrue(both > ROUNDS / 50, read + " read, " + refused + " refused");
    }

    @Test
    void texts() {
        damage(RecordText::print, RecordText::parse, 41);
    }

    @Test
    void sgfFiles() {
        damage(SgfText::print, SgfText::parse, 42);
    }
}
