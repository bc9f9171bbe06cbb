package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
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
            asked(json, summary.position(), summary.roll(), summary.legal());
            summary.net().write(json);
            settings(json, summary.settings());
            RolloutReport report = summary.report();
            games(json, report.trials(), report.needed(), report.clear());
            json.writeArrayFieldStart("candidates");
            for (RolloutLine line : report.lines()) {
                candidate(json, summary, line);
            }
            json.writeEndArray();
        });
    }

    /** What was asked about; the roll may be null. */
    static void asked(JsonGenerator json, Position position, Roll roll, int legal) throws IOException {
        Json.position(json, position);
        if (roll != null) {
            json.writeStringField("roll", roll.toString());
            json.writeNumberField("legalPlays", legal);
        }
    }

    /** How many games were played, and whether the best is clear where that was asked. */
    static void games(JsonGenerator json, int trials, double needed, boolean clear) throws IOException {
        json.writeNumberField("games", trials);
        if (needed > 0) {
            json.writeNumberField("standardErrorsNeeded", Numbers.rounded(needed));
            json.writeBooleanField("clear", clear);
        }
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
            Json.play(json, summary.candidates().get(line.candidate()));
        }
        estimate(json, "equity", line.equity());
        estimate(json, "cost", line.behind());
        estimate(json, "plainEquity", line.plain());
        reduction(json, line.reduction());
        json.writeObjectFieldStart("chances");
        for (int k = 0; k < CHANCES.length; k++) {
            estimate(json, CHANCES[k], line.chances().get(k));
        }
        json.writeEndObject();
        json.writeEndObject();
    }

    /** What taking luck off has saved, where that can be said. */
    static void reduction(JsonGenerator json, double reduction) throws IOException {
        if (Double.isFinite(reduction)) {
            json.writeNumberField("varianceReduction", Numbers.rounded(reduction));
        }
    }

    static void estimate(JsonGenerator json, String name, Estimate estimate) throws IOException {
        json.writeObjectFieldStart(name);
        json.writeNumberField("mean", Numbers.rounded(estimate.mean()));
        json.writeNumberField("standardError", Numbers.rounded(estimate.standardError()));
        json.writeEndObject();
    }
}
