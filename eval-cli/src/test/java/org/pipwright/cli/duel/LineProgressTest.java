package org.pipwright.cli.duel;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class LineProgressTest {
    private static final long SECOND = 1_000_000_000L;

    private long now = 5 * SECOND;

    @Test
    void aLineComesHalfAMinuteAfterTheOneBefore() {
        StringWriter lines = new StringWriter();
        Progress progress = new LineProgress(90_000, "games", new PrintWriter(lines, true), () -> now);
        for (int second = 1; second <= 65; second++) {
            now += SECOND;
            progress.reached(1000L * second, "+0.1");
        }
        progress.done();
        String expected = "30000 of 90000 games, 1000 a second: +0.1\n60000 of 90000 games, 1000 a second: +0.1\n";
        assertEquals(expected, lines.toString().replace("\r\n", "\n"));
    }
}
