package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import org.pipwright.engine.play.PlayJson;
import org.pipwright.engine.position.PositionJson;
import org.pipwright.engine.ranking.RankedPlay;

/** A ranking as JSON. The resource {@value #SCHEMA} is its JSON Schema (draft 2020-12). */
public final class RankJson {
    /** Name of the schema resource, from the root of the class path. */
    public static final String SCHEMA = "/org/pipwright/cli/rank.schema.json";

    private static final String FORM = "pipwright-rank";

    private RankJson() {}

    /**
     * Prints a ranking.
     *
     * @param report the ranking
     * @param out where to
     */
    public static void write(RankReport report, PrintWriter out) {
        Json.print(out, FORM, json -> members(report, json));
    }

    /**
     * Writes the same object as the answer to a line of a batch.
     *
     * @param report the ranking
     * @param json where to
     * @param line number of the line, from 1
     * @throws IOException if the generator cannot write
     */
    public static void write(RankReport report, JsonGenerator json, long line) throws IOException {
        Json.object(json, FORM, object -> {
            object.writeNumberField("line", line);
            members(report, object);
        });
    }

    private static void members(RankReport report, JsonGenerator json) throws IOException {
        json.writeFieldName("position");
        PositionJson.write(json, report.position());
        json.writeStringField("positionText", report.position().toString());
        json.writeStringField("roll", report.roll().toString());
        report.net().write(json);
        json.writeNumberField("legalPlays", report.legal());
        json.writeNumberField("rankedPlays", report.ranked());
        json.writeArrayFieldStart("plays");
        for (int i = 0; i < report.shown().size(); i++) {
            play(json, i + 1, report.shown().get(i), report);
        }
        json.writeEndArray();
        if (report.explanation().isPresent()) {
            ExplainJson.write(json, report.explanation().get());
        }
    }

    private static void play(JsonGenerator json, int place, RankedPlay ranked, RankReport report) throws IOException {
        json.writeStartObject();
        json.writeNumberField("place", place);
        json.writeFieldName("play");
        PlayJson.write(json, ranked.play());
        json.writeStringField("playText", ranked.play().toString());
        Json.number(json, "equity", ranked.equity());
        Json.number(json, "cost", ranked.cost());
        json.writeStringField("grade", ranked.grade().word());
        json.writeStringField("basis", report.basis(ranked).title());
        Json.depth(json, ranked.depth());
        Json.chances(json, ranked.outcomes());
        json.writeEndObject();
    }
}
