package org.pipwright.cli.batch;

import java.io.Closeable;
import java.io.IOException;
import org.pipwright.engine.judge.Verdict;

/** Where the answers to some lines are written, one after another. Serves one thread; closing it ends the last answer. */
public interface Sheet extends Closeable {
    /**
     * Writes the answer to a line.
     *
     * @param verdict what a judge says
     * @param line number of the line, from 1
     * @throws IOException if it cannot be written
     */
    void answer(Verdict verdict, long line) throws IOException;

    /**
     * Writes why a line has no answer.
     *
     * @param error what is wrong with it and how to mend it
     * @param line number of the line, from 1
     * @throws IOException if it cannot be written
     */
    void error(String error, long line) throws IOException;
}
