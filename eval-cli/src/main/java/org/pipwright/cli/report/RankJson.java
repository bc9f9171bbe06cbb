package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.ranking.Grade;

/** A ranking as JSON. The resource {@value #SCHEMA} is its JSON Schema (draft 2020-12). */
public final class RankJson {
    /** Name of the schema resource, from the root of the class path. */
    public static final String SCHEMA = "/org/pipwright/cli/rank.schema.json";

    static final String FORM = "pipwright-rank";

    /** In version 1 costs were against the best of the plays asked about, not against the best play. */
    private static final int VERSION = 2;

    private RankJson() {}

    /**
     * Prints a ranking.
     *
     * @param report the ranking
     * @param out where to
     */
    public static void write(RankReport report, PrintWriter out) {
        Json.print(out, FORM, VERSION, json -> members(report, json));
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
        Json.line(json, FORM, VERSION, line, object -> members(report, object));
    }

    private static void members(RankReport report, JsonGenerator json) throws IOException {
        Question question = report.question();
        Json.position(json, question.position());
        json.writeStringField("roll", question.roll().toString());
        report.net().write(json);
        if (question.cubeful()) {
            stakes(json, question);
        }
        json.writeNumberField("legalPlays", report.legal());
        json.writeNumberField("rankedPlays", report.ranked());
        json.writeArrayFieldStart("plays");
        for (int i = 0; i < report.shown().size(); i++) {
            play(json, i + 1, report, report.shown().get(i));
        }
        json.writeEndArray();
        if (report.missed().isPresent()) {
            PlayVerdict best = report.missed().get();
            json.writeObjectFieldStart("best");
            Json.play(json, best.play());
            json.writeFieldName(question.cubeful() ? "cubefulValue" : "equity");
            json.writeNumber(Numbers.millionths(best.value()));
            json.writeEndObject();
        }
        if (report.explanation().isPresent()) {
            ExplainJson.write(json, report.explanation().get());
        }
        if (question.stakes() instanceof MoneyStakes) {
            json.writeStringField("caution", CubeWords.CAUTION);
        }
    }

    static void stakes(JsonGenerator json, Question question) throws IOException {
        CubeJson.cube(json, question.cube());
        CubeJson.stakes(json, question.stakes());
        boolean match = question.stakes() instanceof MatchStakes;
        json.writeStringField("unit", match ? "chance to win the match" : "points per unit of the cube");
    }

    static void play(JsonGenerator json, int place, RankReport report, PlayVerdict play) throws IOException {
        boolean cube = report.question().cubeful();
        json.writeStartObject();
        json.writeNumberField("place", place);
        Json.play(json, play.play());
        if (cube) {
            withCube(json, play, report.bestEquity());
        } else {
            Json.number(json, "equity", play.value());
            Json.number(json, "cost", play.cost());
            json.writeStringField("grade", play.grade().word());
        }
        json.writeStringField("basis", play.basis().title());
        Json.depth(json, play.depth());
        if (cube && play.depth().games() > 0) {
            json.writeNumberField("chancesLookahead", play.lookahead());
        }
        Json.chances(json, play.outcomes());
        json.writeEndObject();
    }

    /** The value with the cube, and that without it; the best equity without the cube is not always its own. */
    private static void withCube(JsonGenerator json, PlayVerdict play, double bestEquity) throws IOException {
        json.writeNumberField("cubefulValue", Numbers.rounded(play.value()));
        json.writeNumberField("cubefulCost", Numbers.rounded(play.cost()));
        json.writeStringField("cubefulGrade", play.grade().word());
        json.writeBooleanField("cubefulExact", play.basis() == Basis.EXACT);
        double behind = play.equity() - bestEquity;
        json.writeNumberField("equity", Numbers.rounded(play.equity()));
        json.writeNumberField("cost", Numbers.rounded(behind));
        json.writeStringField("grade", Grade.ofCost(Math.min(0, behind)).word());
    }
}
