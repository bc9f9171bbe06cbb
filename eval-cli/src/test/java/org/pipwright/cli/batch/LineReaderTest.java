package org.pipwright.cli.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.cli.console.UserError;

class LineReaderTest {
    /** A stream that gives a few bytes at a time, as a pipe may. */
    private static InputStream slowly(String text, SplittableRandom random) {
        return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)) {
            @Override
            public synchronized int read(byte[] to, int from, int length) {
                return super.read(to, from, Math.min(length, 1 + random.nextInt(50)));
            }
        };
    }

    private static List<String> read(InputStream in) throws IOException {
        LineReader reader = new LineReader(in);
        List<String> lines = new ArrayList<>();
        for (Line line = reader.read(); line != null; line = reader.read()) {
            lines.add(line.number() + ":" + line.text());
        }
        assertNull(reader.read(), "the end stays the end");
        return lines;
    }

    /** Random texts against the lines that the JDK finds in them. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void linesAreThoseOfTheJdk(long seed) throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        String signs = "ab \u00e9\u25cf\n\n\n\t";
        StringBuilder text = new StringBuilder();
        for (int n = random.nextInt(5000); n > 0; n--) {
            text.append(signs.charAt(random.nextInt(signs.length())));
        }
        List<String> expected = new ArrayList<>();
        int number = 0;
        for (String line : text.toString().split("\n", -1)) {
            number++;
            if (!line.isBlank()) {
                expected.add(number + ":" + line.strip());
            }
        }
        assertEquals(expected, read(slowly(text.toString(), random)));
    }

    @Test
    void longLinesAreCutOffAndOthersRead() throws IOException {
        String longest = "x".repeat(LineReader.LONGEST);
        String text = longest + "\n" + longest + "y\nshort\r\n" + "z".repeat(300_000) + "\nlast";
        assertEquals(
                List.of("1:" + longest, "2:null", "3:short", "4:null", "5:last"),
                read(slowly(text, new SplittableRandom(7))));
        assertEquals(List.of(), read(slowly("", new SplittableRandom(8))));
    }

    /** Lines before it are answered; only then is it said that there are none behind it. */
    @Test
    void aLineWithoutEndIsTheLast() throws IOException {
        InputStream zeros = new InputStream() {
            @Override
            public int read() {
                return 0;
            }

            @Override
            public int read(byte[] to, int from, int length) {
                Arrays.fill(to, from, from + length, (byte) 0);
                return length;
            }

            @Override
            public int available() {
                return 1;
            }
        };
        byte[] before = ("one\n" + "x".repeat(LineReader.ENDLESS) + "\nthree\n").getBytes(StandardCharsets.UTF_8);
        LineReader reader = new LineReader(new SequenceInputStream(new ByteArrayInputStream(before), zeros));
        assertEquals("one", reader.read().text());
        assertNull(reader.read().text(), "as long as a line may be passed over");
        assertEquals("three", reader.read().text());
        Line endless = assertTimeoutPreemptively(Duration.ofMinutes(1), reader::read);
        assertEquals(4, endless.number());
        assertNull(endless.text());
        assertFalse(reader.waiting());
        for (int i = 0; i < 2; i++) {
            assertEquals(
                    "line 4 has more than 16,777,216 bytes: nothing was read behind it",
                    assertThrows(UserError.class, reader::read).getMessage());
        }
    }

    /** As a channel's stream of a pipe does. */
    @Test
    void aStreamThatCannotSayWhatIsAtHandIsReadAllTheSame() throws IOException {
        InputStream text = new ByteArrayInputStream("one\ntwo\n".getBytes(StandardCharsets.UTF_8));
        InputStream in = new FilterInputStream(text) {
            @Override
            public int available() throws IOException {
                throw new IOException("Illegal seek");
            }
        };
        LineReader reader = new LineReader(in);
        assertFalse(reader.waiting());
        assertEquals("one", reader.read().text());
        assertTrue(reader.waiting());
        assertEquals("two", reader.read().text());
        assertFalse(reader.waiting());
        assertNull(reader.read());
    }

    @Test
    void itKnowsWhetherMoreIsAtHand() throws IOException {
        LineReader reader = new LineReader(new ByteArrayInputStream("one\ntwo\n".getBytes(StandardCharsets.UTF_8)));
        assertTrue(reader.waiting());
        reader.read();
        assertTrue(reader.waiting());
        reader.read();
        assertFalse(reader.waiting());
    }
}
