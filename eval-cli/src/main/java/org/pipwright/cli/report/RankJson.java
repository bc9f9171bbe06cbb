package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;

/** A ranking as JSON. The resource {@value #SCHEMA} is its JSON Schema (draft 2020-12). */
public final class RankJson {
    /** Name of the schema resource, from the root of the class path. */
    public static final String SCHEMA = "/org/pipwright/cli/rank.schema.json";

    static final String FORM = "pipwright-rank";

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
        Json.line(json, FORM, line, object -> members(report, object));
    }

    private static void members(RankReport report, JsonGenerator json) throws IOException {
        Question question = report.question();
        Json.position(json, question.position());
        json.writeStringField("roll", question.roll().toString());
        report.net().write(json);
        if (question.cubeful()) {
            CubefulRankJson.stakes(json, question);
        }
        json.writeNumberField("legalPlays", report.legal());
        json.writeNumberField("rankedPlays", report.ranked());
        json.writeArrayFieldStart("plays");
        for (int i = 0; i < report.shown().size(); i++) {
            if (question.cubeful()) {
                CubefulRankJson.play(json, i + 1, report.shown().get(i), report.bestEquity());
            } else {
                play(json, i + 1, report.shown().get(i));
            }
        }
        json.writeEndArray();
        if (report.explanation().isPresent()) {
            ExplainJson.write(json, report.explanation().get());
        }
        if (question.stakes() instanceof MoneyStakes) {
            json.writeStringField("caution", CubeWords.CAUTION);
        }
    }

    private static void play(JsonGenerator json, int place, PlayVerdict ranked) throws IOException {
        json.writeStartObject();
        json.writeNumberField("place", place);
        Json.play(json, ranked.play());
        Json.number(json, "equity", ranked.value());
        Json.number(json, "cost", ranked.cost());
        json.writeStringField("grade", ranked.grade().word());
        json.writeStringField("basis", ranked.basis().title());
        Json.depth(json, ranked.depth());
        Json.chances(json, ranked.outcomes());
        json.writeEndObject();
    }
}
