package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import org.pipwright.engine.cubeplay.CubefulPlay;
import org.pipwright.engine.play.PlayJson;
import org.pipwright.engine.position.PositionJson;
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
        Json.print(out, "pipwright-rank", json -> {
            json.writeFieldName("position");
            PositionJson.write(json, report.position());
            json.writeStringField("positionText", report.position().toString());
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
            if (!report.match()) {
                json.writeStringField("caution", CubeWords.CAUTION);
            }
        });
    }

    private static void play(JsonGenerator json, int place, CubefulPlay play, double bestEquity) throws IOException {
        json.writeStartObject();
        json.writeNumberField("place", place);
        json.writeFieldName("play");
        PlayJson.write(json, play.play());
        json.writeStringField("playText", play.play().toString());
        json.writeNumberField("cubefulValue", Numbers.rounded(play.value()));
        json.writeNumberField("cubefulCost", Numbers.rounded(play.cost()));
        json.writeStringField("cubefulGrade", play.grade().word());
        json.writeBooleanField("cubefulExact", play.exact());
        double equity = play.outcomes().equity();
        json.writeNumberField("equity", Numbers.rounded(equity));
        json.writeNumberField("cost", Numbers.rounded(equity - bestEquity));
        json.writeStringField(
                "grade", Grade.ofCost(Math.min(0, equity - bestEquity)).word());
        json.writeNumberField("lookahead", play.lookahead());
        Json.chances(json, play.outcomes());
        json.writeEndObject();
    }
}
