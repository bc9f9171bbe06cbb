package org.pipwright.cli.batch;

import java.io.IOException;
import java.io.Writer;
import org.pipwright.cli.report.Rows;
import org.pipwright.engine.judge.Verdict;

/**
 * Answers as rows.
 *
 * @param to where to write
 * @param rows how
 */
public record RowSheet(Writer to, Rows rows) implements Sheet {
    @Override
    public void answer(Verdict verdict, long line) throws IOException {
        to.write(rows.of(verdict, line));
    }

    @Override
    public void error(String error, long line) throws IOException {
        to.write(rows.error(error, line));
    }

    @Override
    public void close() {
        // Each row ends its line.
    }
}
