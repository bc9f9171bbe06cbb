package org.pipwright.cli.batch;

import java.io.IOException;
import java.io.Writer;
import org.pipwright.engine.judge.Question;

/** What is asked of each line, and how answers are written. Used by any number of threads. */
public interface Lines {
    /**
     * The question of a line.
     *
     * @param request what the line says
     * @return what a judge is asked
     * @throws org.pipwright.cli.console.UserError if there is no answer to it
     */
    Question question(Request request);

    /**
     * What stands above all answers.
     *
     * @return whole lines, or nothing
     */
    String head();

    /**
     * A sheet for the answers to some lines.
     *
     * @param to where to write
     * @return the sheet
     * @throws IOException if nothing can be written there
     */
    Sheet sheet(Writer to) throws IOException;
}
