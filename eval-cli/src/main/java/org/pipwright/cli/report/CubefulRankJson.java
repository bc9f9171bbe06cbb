package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import org.pipwright.engine.cubeplay.CubefulPlay;
import org.pipwright.engine.ranking.Grade;

/** A ranking with the cube as JSON, in the form of {@value RankJson#SCHEMA}. */
public final class CubefulRankJson {
    private CubefulRankJson() {}

    /**
     * Prints a ranking.
     *
     * @param report the ranking
     * @param out where to
     */
    public static void write(CubefulRankReport report, PrintWriter out) {
        Json.print(out, RankJson.FORM, json -> members(report, json));
    }

    /**
     * Writes the same object as the answer to a line of a batch.
     *
     * @param report the ranking
     * @param json where to
     * @param line number of the line, from 1
     * @throws IOException if the generator cannot write
     */
    public static void write(CubefulRankReport report, JsonGenerator json, long line) throws IOException {
        Json.line(json, RankJson.FORM, line, object -> members(report, object));
    }

    private static void members(CubefulRankReport report, JsonGenerator json) throws IOException {
        Json.position(json, report.position());
        json.writeStringField("roll", report.roll().toString());
        report.net().write(json);
        CubeJson.cube(json, report.cube());
        CubeJson.stakes(json, report.stakes());
        json.writeStringField("unit", report.match() ? "chance to win the match" : "points per unit of the cube");
        json.writeNumberField("legalPlays", report.legal());
        json.writeNumberField("rankedPlays", report.ranked());
        json.writeArrayFieldStart("plays");
        for (int i = 0; i < report.shown().size(); i++) {
            play(json, i + 1, report.shown().get(i), report.bestEquity());
        }
        json.writeEndArray();
        if (report.explanation().isPresent()) {
            ExplainJson.write(json, report.explanation().get());
        }
        if (!report.match()) {
            json.writeStringField("caution", CubeWords.CAUTION);
        }
    }

    private static void play(JsonGenerator json, int place, CubefulPlay play, double bestEquity) throws IOException {
        json.writeStartObject();
        json.writeNumberField("place", place);
        Json.play(json, play.play());
        json.writeNumberField("cubefulValue", Numbers.rounded(play.value()));
        json.writeNumberField("cubefulCost", Numbers.rounded(play.cost()));
        json.writeStringField("cubefulGrade", play.grade().word());
        json.writeBooleanField("cubefulExact", play.exact());
        double equity = play.outcomes().equity();
        json.writeNumberField("equity", Numbers.rounded(equity));
        json.writeNumberField("cost", Numbers.rounded(equity - bestEquity));
        json.writeStringField(
                "grade", Grade.ofCost(Math.min(0, equity - bestEquity)).word());
        Json.depth(json, play.depth());
        if (play.depth().games() > 0) {
            json.writeNumberField("chancesLookahead", play.lookahead());
        }
        Json.chances(json, play.outcomes());
        json.writeEndObject();
    }
}
