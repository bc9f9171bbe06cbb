package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;

/** What answers a line of a batch that cannot be answered. The resource {@value #SCHEMA} is its JSON Schema. */
public final class ErrorJson {
    /** Name of the schema resource, from the root of the class path. */
    public static final String SCHEMA = "/org/pipwright/cli/error.schema.json";

    private ErrorJson() {}

    /**
     * Writes one object.
     *
     * @param json where to
     * @param line number of the line, from 1
     * @param error what is wrong with it and how to mend it
     * @throws IOException if the generator cannot write
     */
    public static void write(JsonGenerator json, long line, String error) throws IOException {
        Json.line(json, "pipwright-error", 1, line, members -> members.writeStringField("error", error));
    }
}
