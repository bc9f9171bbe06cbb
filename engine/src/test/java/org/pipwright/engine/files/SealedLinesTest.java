package org.pipwright.engine.files;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@Tag("fast")
class SealedLinesTest {
    private static final String FORM = "form 1";

    /** Test vectors of FIPS 180-4 (NIST, examples of SHA-256). */
    @ParameterizedTest
    @CsvSource({
        "'', e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
        "abc, ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
    })
    void checksums(String text, String expected) {
        assertEquals(expected, SealedLines.sha256(text));
    }

    @Test
    void linesComeBack() {
        for (List<String> lines : List.of(List.<String>of(), List.of("one", "", "sha256 of something", "\u00e9"))) {
            String text = SealedLines.print(FORM, lines);
            assertEquals(Optional.of(lines), SealedLines.parse(FORM, text));
            assertEquals(Optional.empty(), SealedLines.parse("form 2", text));
        }
    }

    @Test
    void anyChangeIsFound() {
        String text = SealedLines.print(FORM, List.of("one", "two"));
        for (int at = 0; at < text.length(); at++) {
            assertEquals(Optional.empty(), SealedLines.parse(FORM, text.substring(0, at)), "cut at " + at);
            char other = (char) (text.charAt(at) ^ 1);
            String changed = text.substring(0, at) + other + text.substring(at + 1);
            assertEquals(Optional.empty(), SealedLines.parse(FORM, changed), "changed at " + at);
        }
        assertEquals(Optional.empty(), SealedLines.parse(FORM, text + "\n"));
    }
}
