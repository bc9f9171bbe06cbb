package org.pipwright.cli.console;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SubstitutesTest {
    private static String printed(String text, Charset charset) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Console console = new Console(new ByteArrayInputStream(new byte[0]), out, out, charset);
        console.out().print(text.substring(0, 1));
        console.out().print(text.substring(1).toCharArray());
        console.out().flush();
        console.err().print(text);
        console.err().flush();
        return out.toString(charset);
    }

    /** Output and error alike; encodings that have a sign keep it. */
    @ParameterizedTest
    @CsvSource({
        "US-ASCII, \u25cf 1.5 \u00b1 0.1 \u00b7 2\u00d73\u2026 \u20ac, # 1.5 +/- 0.1 . 2x3... ?",
        "ISO-8859-1, \u25cf 1.5 \u00b1 0.1 \u2502, # 1.5 \u00b1 0.1 |",
        "UTF-8, \u25cf 1.5 \u00b1 0.1 \u20ac, \u25cf 1.5 \u00b1 0.1 \u20ac"
    })
    void signsThatAnEncodingLacks(String charset, String text, String expected) {
        assertEquals(expected + expected, printed(text, Charset.forName(charset)));
    }

    @ParameterizedTest
    @CsvSource({"US-ASCII, false", "ISO-8859-1, false", "UTF-8, true"})
    void boardsNeedTheirSigns(String charset, boolean unicode) {
        Console console = new Console(
                new ByteArrayInputStream(new byte[0]),
                new ByteArrayOutputStream(),
                new ByteArrayOutputStream(),
                Charset.forName(charset));
        assertEquals(unicode, console.unicode());
        assertEquals(StandardCharsets.UTF_8.name().equals(charset), unicode);
    }
}
