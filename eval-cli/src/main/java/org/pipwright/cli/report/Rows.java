package org.pipwright.cli.report;

import org.pipwright.engine.judge.Verdict;

/** Answers to many questions as rows of text, each row a line. */
public interface Rows {
    /**
     * The headings of the columns.
     *
     * @return whole lines
     */
    String head();

    /**
     * The rows of an answer.
     *
     * @param verdict what a judge says
     * @param line number of the line of input, from 1; 0 if there is none
     * @return whole lines
     */
    String of(Verdict verdict, long line);

    /**
     * The row of a line without an answer.
     *
     * @param error why
     * @param line its number, from 1
     * @return a whole line
     */
    String error(String error, long line);
}
