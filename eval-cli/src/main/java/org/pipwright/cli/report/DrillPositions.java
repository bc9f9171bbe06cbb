package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;

/**
 * Exercises from a file of positions: each line one.
 *
 * @param file the file, as the user named it
 * @param count how many it has
 * @param lookahead future rolls that the judge averages over
 */
public record DrillPositions(String file, int count, int lookahead) implements DrillSource {
    @Override
    public String title() {
        return "Positions";
    }

    @Override
    public String about() {
        return "plays and doubles that the teacher has chosen";
    }

    @Override
    public String origin(String net) {
        return "From " + file + ". Judged by net " + net + ", lookahead " + lookahead + ".";
    }

    @Override
    public String mark() {
        return "";
    }

    @Override
    public void write(JsonGenerator json) throws IOException {
        json.writeStringField("source", "positions");
        json.writeStringField("file", file);
        json.writeNumberField("wanted", count);
        json.writeNumberField("lookahead", lookahead);
    }
}
