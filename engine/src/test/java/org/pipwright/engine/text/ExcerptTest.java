package org.pipwright.engine.text;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("fast")
class ExcerptTest {
    @Test
    void shortTextIsKeptOnOneLineWithoutControlCharacters() {
        assertEquals("8/5 6/5", Excerpt.of("  8/5\r\n\t6/5\u0007 "));
        assertEquals("", Excerpt.of(""));
        String longest = "x".repeat(Excerpt.LIMIT);
        assertEquals(longest, Excerpt.of(longest));
    }

    @Test
    void longTextIsCut() {
        String cut = "x".repeat(Excerpt.LIMIT - 3) + "...";
        assertEquals(cut, Excerpt.of("x".repeat(Excerpt.LIMIT + 1)));
        assertEquals(cut, Excerpt.of("x".repeat(10_000_000)));
        assertEquals("x...", Excerpt.of("x" + " ".repeat(1000)));
    }
}
