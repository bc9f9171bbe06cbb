package org.pipwright.cli.report;

import org.pipwright.engine.ranking.Grade;

/**
 * A cell of a table.
 *
 * @param text what it says, without escape sequences
 * @param style an escape code for its colour (ECMA-48, select graphic rendition), shown only where colours are; 0 for none
 */
record Cell(String text, int style) {
    /** No colour. */
    static final int PLAIN = 0;

    private static final int GREEN = 32;
    private static final int CYAN = 36;
    private static final int YELLOW = 33;
    private static final int RED = 31;

    /** A grade: its word says all, the colour helps the eye. */
    static Cell of(Grade grade) {
        switch (grade) {
            case FINE:
                return new Cell(grade.word(), GREEN);
            case THIN:
                return new Cell(grade.word(), CYAN);
            case COSTLY:
                return new Cell(grade.word(), YELLOW);
            default:
                return new Cell(grade.word(), RED);
        }
    }

    String coloured() {
        return style == PLAIN ? text : "\u001b[" + style + "m" + text + "\u001b[0m";
    }
}
