package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.Locale;
import org.pipwright.engine.rollout.ActionStanding;
import org.pipwright.engine.rollout.CubefulLine;
import org.pipwright.engine.rollout.CubefulRolloutReport;

/** A rollout with the cube as JSON. The resource {@value #SCHEMA} is its JSON Schema (draft 2020-12). */
public final class CubefulRolloutJson {
    /** Name of the schema resource, from the root of the class path. */
    public static final String SCHEMA = "/org/pipwright/cli/cubeful-rollout.schema.json";

    private CubefulRolloutJson() {}

    /**
     * Prints a rollout.
     *
     * @param summary the rollout
     * @param out where to
     */
    public static void write(CubefulRolloutSummary summary, PrintWriter out) {
        Json.print(out, "pipwright-cubeful-rollout", 2, json -> {
            RolloutJson.asked(json, summary.position(), summary.roll(), summary.legal());
            summary.net().write(json);
            CubeJson.cube(json, summary.cube());
            CubeJson.stakes(json, summary.stakes());
            json.writeStringField("unit", summary.match() ? "chance to win the match" : "points per unit of the cube");
            RolloutJson.settings(json, summary.settings());
            CubefulRolloutReport report = summary.report();
            RolloutJson.games(json, report.trials(), report.needed(), report.clear());
            json.writeArrayFieldStart("candidates");
            for (CubefulLine line : report.lines()) {
                candidate(json, summary, line);
            }
            json.writeEndArray();
            if (report.actions().isPresent()) {
                decision(json, summary, report.actions().get());
            }
            if (!summary.match()) {
                json.writeStringField("caution", CubeWords.CAUTION);
            }
        });
    }

    private static void candidate(JsonGenerator json, CubefulRolloutSummary summary, CubefulLine line)
            throws IOException {
        json.writeStartObject();
        if (summary.roll() != null) {
            Json.play(json, summary.plays().get(line.candidate()));
        } else {
            json.writeStringField("action", summary.name(line.candidate()));
        }
        RolloutJson.estimate(json, "value", line.value());
        RolloutJson.estimate(json, "cost", line.behind());
        RolloutJson.estimate(json, "plainValue", line.plain());
        RolloutJson.reduction(json, line.reduction());
        json.writeNumberField("doubled", Numbers.rounded(line.doubled()));
        json.writeNumberField("passed", Numbers.rounded(line.passed()));
        json.writeNumberField("meanCube", Numbers.rounded(line.cube()));
        json.writeEndObject();
    }

    private static void decision(JsonGenerator json, CubefulRolloutSummary summary, ActionStanding actions)
            throws IOException {
        CubeJson.values(json, actions.values());
        json.writeArrayFieldStart("choices");
        for (ActionStanding.Choice choice : actions.choices()) {
            json.writeStartObject();
            json.writeStringField("between", CubefulRolloutText.between(choice.kind()));
            RolloutJson.estimate(json, "difference", choice.difference());
            if (actions.needed() > 0) {
                json.writeStringField("clarity", choice.clarity().name().toLowerCase(Locale.ROOT));
            }
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeStringField("verdict", CubeWords.verdict(actions.values(), summary.cube(), summary.stakes()));
    }
}
