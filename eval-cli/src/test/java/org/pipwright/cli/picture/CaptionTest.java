package org.pipwright.cli.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.position.Position;

class CaptionTest {
    private static final Drawing BOARD = BoardPicture.of(Scene.of(Position.start()), Theme.LIGHT);

    @Test
    void wordsFillLines() {
        assertEquals(List.of("one two", "three", "four"), Caption.lines("one two three four", 8));
        assertEquals(List.of("abcdefgh", "ij k"), Caption.lines("abcdefghij k", 8));
        assertEquals(List.of(), Caption.lines("", 8));
    }

    @Test
    void longTextsMakeThePageHigher() {
        Drawing one = Caption.under(BOARD, "short", Theme.LIGHT);
        Drawing more = Caption.under(BOARD, "word ".repeat(60), Theme.LIGHT);
        assertTrue(BOARD.height() < one.height() && one.height() < more.height());
        assertEquals(1, new Svg(SvgText.of(one)).with("caption").size());
        assertSame(BOARD, Caption.under(BOARD, " \n", Theme.LIGHT));
    }

    @Test
    void whatXmlCannotHoldBecomesSpace() {
        String nasty = "a\u0000\u0007b \ud800 <&>\"' \ufffe c\n\ud83c\udfb2";
        Svg svg = new Svg(SvgText.of(Caption.under(BOARD, nasty, Theme.LIGHT)));
        assertEquals("a b <&>\"' c \ud83c\udfb2", svg.text("caption"));
    }

    @Test
    void tooLongIsRefused() {
        String text = "x".repeat(Caption.LIMIT + 1);
        assertThrows(IllegalArgumentException.class, () -> Caption.under(BOARD, text, Theme.LIGHT));
    }
}
