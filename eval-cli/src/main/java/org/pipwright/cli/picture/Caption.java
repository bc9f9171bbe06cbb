package org.pipwright.cli.picture;

import java.util.ArrayList;
import java.util.List;

/** A text under a picture, broken into lines that fit its width. */
public final class Caption {
    /** Longest caption, in chars. */
    public static final int LIMIT = 400;

    private static final double LINE = 27;
    /** Mean width of a letter as a share of the font's height; sans-serif fonts have 0.5 to 0.55. */
    private static final double LETTER = 0.54;

    private Caption() {}

    /**
     * Puts a caption under a drawing.
     *
     * @param drawing the drawing
     * @param text the caption; white space and control characters become single spaces, as do halves of characters
     * @param theme its colours
     * @return the drawing with the caption under it
     * @throws IllegalArgumentException if the text has more than {@value #LIMIT} chars
     */
    public static Drawing under(Drawing drawing, String text, Theme theme) {
        if (text.length() > LIMIT) {
            throw new IllegalArgumentException("a caption has at most " + LIMIT + " characters, not " + text.length());
        }
        List<Shape> shapes = new ArrayList<>();
        double room = drawing.width() - 2 * BoardPlan.MARGIN;
        double y = LINE / 2;
        for (String line : lines(tidy(text), (int) (room / (LETTER * BoardPlan.LETTER)))) {
            shapes.add(new Shape.Label(
                    "caption", new Spot(BoardPlan.MARGIN, y), line, BoardPlan.LETTER, false, false, theme.text()));
            y += LINE;
        }
        return shapes.isEmpty() ? drawing : drawing.above(shapes, LINE * shapes.size() + BoardPlan.MARGIN / 2);
    }

    /**
     * A text fit for XML, which has no place for control characters and unpaired surrogates.
     *
     * @param text any text
     * @return one line; what is unfit, and every run of white space, becomes one space
     */
    public static String tidy(String text) {
        return text.codePoints()
                .map(c -> Character.isISOControl(c) || c >= 0xD800 && c <= 0xDFFF || (c & 0xFFFE) == 0xFFFE ? ' ' : c)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString()
                .replaceAll("\\s+", " ")
                .strip();
    }

    /** Words filled into lines; a word longer than a line is cut. */
    static List<String> lines(String text, int width) {
        List<String> lines = new ArrayList<>();
        String rest = text;
        while (rest.length() > width) {
            int space = rest.lastIndexOf(' ', width);
            int end = space > 0 ? space : width;
            lines.add(rest.substring(0, end));
            rest = rest.substring(end).strip();
        }
        if (!rest.isEmpty()) {
            lines.add(rest);
        }
        return lines;
    }
}
