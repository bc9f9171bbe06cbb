package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import org.pipwright.engine.play.PlayJson;
import org.pipwright.engine.position.PositionJson;
import org.pipwright.engine.rollout.Estimate;
import org.pipwright.engine.rollout.RolloutLine;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;

/** A rollout as JSON. The resource {@value #SCHEMA} is its JSON Schema (draft 2020-12). */
public final class RolloutJson {
    /** Name of the schema resource, from the root of the class path. */
    public static final String SCHEMA = "/org/pipwright/cli/rollout.schema.json";

    private static final String[] CHANCES = {
        "winSingle", "winGammon", "winBackgammon", "loseSingle", "loseGammon", "loseBackgammon"
    };

    private RolloutJson() {}

    /**
     * Prints a rollout.
     *
     * @param summary the rollout
     * @param out where to
     */
    public static void write(RolloutSummary summary, PrintWriter out) {
        Json.print(out, "pipwright-rollout", json -> {
            json.writeFieldName("position");
            PositionJson.write(json, summary.position());
            json.writeStringField("positionText", summary.position().toString());
            if (summary.roll() != null) {
                json.writeStringField("roll", summary.roll().toString());
                json.writeNumberField("legalPlays", summary.legal());
            }
            summary.net().write(json);
            settings(json, summary.settings());
            RolloutReport report = summary.report();
            json.writeNumberField("games", report.trials());
            if (report.needed() > 0) {
                json.writeNumberField("standardErrorsNeeded", Numbers.rounded(report.needed()));
                json.writeBooleanField("clear", report.clear());
            }
            json.writeArrayFieldStart("candidates");
            for (RolloutLine line : report.lines()) {
                candidate(json, summary, line);
            }
            json.writeEndArray();
        });
    }

    static void settings(JsonGenerator json, RolloutSettings settings) throws IOException {
        json.writeObjectFieldStart("settings");
        json.writeNumberField("trials", settings.trials());
        json.writeNumberField("seed", settings.seed());
        json.writeNumberField("lookahead", settings.lookahead());
        json.writeNumberField("truncation", settings.truncation());
        json.writeBooleanField("luckAdjusted", settings.luckAdjusted());
        json.writeNumberField("untilSure", settings.sure());
        json.writeEndObject();
    }

    private static void candidate(JsonGenerator json, RolloutSummary summary, RolloutLine line) throws IOException {
        json.writeStartObject();
        if (summary.roll() != null) {
            json.writeFieldName("play");
            PlayJson.write(json, summary.candidates().get(line.candidate()));
            json.writeStringField(
                    "playText", summary.candidates().get(line.candidate()).toString());
        }
        estimate(json, "equity", line.equity());
        estimate(json, "cost", line.behind());
        estimate(json, "plainEquity", line.plain());
        if (Double.isFinite(line.reduction())) {
            json.writeNumberField("varianceReduction", Numbers.rounded(line.reduction()));
        }
        json.writeObjectFieldStart("chances");
        for (int k = 0; k < CHANCES.length; k++) {
            estimate(json, CHANCES[k], line.chances().get(k));
        }
        json.writeEndObject();
        json.writeEndObject();
    }

    static void estimate(JsonGenerator json, String name, Estimate estimate) throws IOException {
        json.writeObjectFieldStart(name);
        json.writeNumberField("mean", Numbers.rounded(estimate.mean()));
        json.writeNumberField("standardError", Numbers.rounded(estimate.standardError()));
        json.writeEndObject();
    }
}
