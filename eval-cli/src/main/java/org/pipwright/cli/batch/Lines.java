package org.pipwright.cli.batch;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;

/** What is asked of each line, and how an answer is written. Used by any number of threads. */
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
     * Writes an answer.
     *
     * @param verdict what a judge says
     * @param line number of the line
     * @param json where to write one object
     * @throws IOException if the generator cannot write
     */
    void write(Verdict verdict, long line, JsonGenerator json) throws IOException;
}
