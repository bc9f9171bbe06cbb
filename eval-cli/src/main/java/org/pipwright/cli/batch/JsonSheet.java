package org.pipwright.cli.batch;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import java.io.IOException;
import java.io.Writer;
import org.pipwright.cli.report.ErrorJson;
import org.pipwright.engine.judge.Verdict;

/** Answers as JSON, an object a line. */
public final class JsonSheet implements Sheet {
    private static final JsonFactory FACTORY = new JsonFactoryBuilder()
            .enable(JsonWriteFeature.ESCAPE_NON_ASCII)
            .rootValueSeparator(System.lineSeparator())
            .build();

    private final Writer to;
    private final JsonGenerator json;
    private final Form form;

    /** How a verdict is written. */
    @FunctionalInterface
    public interface Form {
        /**
         * Writes one object.
         *
         * @param verdict what a judge says
         * @param line number of the line, from 1
         * @param json where to
         * @throws IOException if the generator cannot write
         */
        void write(Verdict verdict, long line, JsonGenerator json) throws IOException;
    }

    /**
     * Begins a sheet.
     *
     * @param to where to write
     * @param form how a verdict is written
     * @throws IOException if nothing can be written there
     */
    public JsonSheet(Writer to, Form form) throws IOException {
        this.to = to;
        this.form = form;
        json = FACTORY.createGenerator(to);
    }

    @Override
    public void answer(Verdict verdict, long line) throws IOException {
        form.write(verdict, line, json);
    }

    @Override
    public void error(String error, long line) throws IOException {
        ErrorJson.write(json, line, error);
    }

    @Override
    public void close() throws IOException {
        json.flush();
        to.write(System.lineSeparator());
        json.close();
    }
}
