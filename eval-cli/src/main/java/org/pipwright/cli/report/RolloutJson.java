package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.rollout.ActionStanding;
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
        Json.print(out, "pipwright-rollout", 2, json -> {
            Question question = summary.question();
            Json.position(json, question.position());
            if (summary.ofPlays()) {
                json.writeStringField("roll", question.roll().toString());
                json.writeNumberField("legalPlays", summary.legal());
            }
            summary.net().write(json);
            if (question.cubeful()) {
                CubeJson.cube(json, question.cube());
                CubeJson.stakes(json, question.stakes());
            }
            json.writeStringField("unit", unit(summary));
            settings(json, summary.settings());
            standings(json, summary);
            if (question.cubeful() && !summary.match()) {
                json.writeStringField("caution", CubeWords.CAUTION);
            }
        });
    }

    private static String unit(RolloutSummary summary) {
        if (summary.match()) {
            return "chance to win the match";
        }
        return summary.question().cubeful() ? "points per unit of the cube" : "points per game";
    }

    private static void standings(JsonGenerator json, RolloutSummary summary) throws IOException {
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
        if (report.actions().isPresent()) {
            decision(json, summary.question(), report.actions().get());
        }
    }

    private static void decision(JsonGenerator json, Question question, ActionStanding actions) throws IOException {
        CubeJson.values(json, actions.values());
        json.writeArrayFieldStart("choices");
        for (ActionStanding.Choice choice : actions.choices()) {
            json.writeStartObject();
            json.writeStringField("between", RolloutText.between(choice.kind()));
            estimate(json, "difference", choice.difference());
            if (actions.needed() > 0) {
                json.writeStringField("clarity", choice.clarity().name().toLowerCase(Locale.ROOT));
            }
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeStringField("verdict", CubeWords.verdict(actions.values(), question.cube(), question.stakes()));
    }

    private static void settings(JsonGenerator json, RolloutSettings settings) throws IOException {
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
        if (summary.ofPlays()) {
            Json.play(json, summary.plays().get(line.candidate()));
        } else if (line.cube().isPresent()) {
            json.writeStringField("action", summary.names().get(line.candidate()));
        }
        estimate(json, "value", line.value());
        estimate(json, "cost", line.behind());
        estimate(json, "plainValue", line.plain());
        if (Double.isFinite(line.reduction())) {
            json.writeNumberField("varianceReduction", Numbers.rounded(line.reduction()));
        }
        if (line.cube().isPresent()) {
            RolloutLine.Cube cube = line.cube().get();
            json.writeNumberField("doubled", Numbers.rounded(cube.doubled()));
            json.writeNumberField("passed", Numbers.rounded(cube.passed()));
            json.writeNumberField("meanCube", Numbers.rounded(cube.shown()));
        } else {
            chances(json, line.chances());
        }
        json.writeEndObject();
    }

    private static void chances(JsonGenerator json, List<Estimate> chances) throws IOException {
        json.writeObjectFieldStart("chances");
        for (int k = 0; k < CHANCES.length; k++) {
            estimate(json, CHANCES[k], chances.get(k));
        }
        json.writeEndObject();
    }

    private static void estimate(JsonGenerator json, String name, Estimate estimate) throws IOException {
        json.writeObjectFieldStart(name);
        json.writeNumberField("mean", Numbers.rounded(estimate.mean()));
        json.writeNumberField("standardError", Numbers.rounded(estimate.standardError()));
        json.writeEndObject();
    }
}
