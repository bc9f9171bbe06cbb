package org.pipwright.engine.bearoff;

/** The kinds of tables that are kept in files. */
public enum TableKind {
    /** Distributions of one side's rolls: {@link OneSidedTable}. */
    ONE_SIDED(1, "onesided", "one-sided"),
    /** Exact values of pairs: {@link TwoSidedTable}. */
    TWO_SIDED(2, "twosided", "two-sided");

    /** Number in the file; never reused. */
    final int code;

    /** Word in the file name. */
    final String word;

    /** Word in messages. */
    final String title;

    TableKind(int code, String word, String title) {
        this.code = code;
        this.word = word;
        this.title = title;
    }

    /** Name of the file for a size; a change of the content's layout changes the version and with it the name. */
    String fileName(SideIndex index) {
        return fileName(index.points(), index.checkers());
    }

    String fileName(int points, int checkers) {
        return word + "-" + points + "x" + checkers + "-v" + TableFile.VERSION + ".table";
    }
}
