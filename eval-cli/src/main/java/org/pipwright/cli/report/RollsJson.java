package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;

/** The best plays of each roll as JSON. The resource {@value #SCHEMA} is its JSON Schema (draft 2020-12). */
public final class RollsJson {
    /** Name of the schema resource, from the root of the class path. */
    public static final String SCHEMA = "/org/pipwright/cli/rolls.schema.json";

    private static final String FORM = "pipwright-rolls";

    private RollsJson() {}

    /**
     * Prints the plays.
     *
     * @param report the plays
     * @param out where to
     */
    public static void write(RollsReport report, PrintWriter out) {
        Json.print(out, FORM, json -> members(report, json));
    }

    private static void members(RollsReport report, JsonGenerator json) throws IOException {
        Question question = report.question();
        Json.position(json, question.position());
        if (!report.before().isEmpty()) {
            json.writeStringField("before", report.before());
        }
        report.net().write(json);
        if (question.cubeful()) {
            RankJson.stakes(json, question);
        }
        json.writeArrayFieldStart("rolls");
        for (Verdict verdict : report.verdicts()) {
            json.writeStartObject();
            json.writeStringField("roll", verdict.question().roll().toString());
            json.writeNumberField("throws", verdict.question().roll().ways());
            json.writeNumberField("legalPlays", verdict.plays().size());
            plays(RankReport.of(verdict, List.of(), report.net(), RollsReport.PLAYS), json);
            json.writeEndObject();
        }
        json.writeEndArray();
        Json.number(json, "mean", report.mean());
        if (question.stakes() instanceof MoneyStakes) {
            json.writeStringField("caution", CubeWords.CAUTION);
        }
    }

    private static void plays(RankReport report, JsonGenerator json) throws IOException {
        json.writeArrayFieldStart("plays");
        int place = 1;
        for (PlayVerdict play : report.shown()) {
            RankJson.play(json, place++, report, play);
        }
        json.writeEndArray();
    }
}
