package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.ranking.Grade;

/** What a ranking with the cube adds to {@link RankJson}. */
final class CubefulRankJson {
    private CubefulRankJson() {}

    /** What is played for. */
    static void stakes(JsonGenerator json, Question question) throws IOException {
        CubeJson.cube(json, question.cube());
        CubeJson.stakes(json, question.stakes());
        boolean match = question.stakes() instanceof MatchStakes;
        json.writeStringField("unit", match ? "chance to win the match" : "points per unit of the cube");
    }

    /** A play; the best equity without the cube is not always its own. */
    static void play(JsonGenerator json, int place, PlayVerdict play, double bestEquity) throws IOException {
        json.writeStartObject();
        json.writeNumberField("place", place);
        Json.play(json, play.play());
        json.writeNumberField("cubefulValue", Numbers.rounded(play.value()));
        json.writeNumberField("cubefulCost", Numbers.rounded(play.cost()));
        json.writeStringField("cubefulGrade", play.grade().word());
        json.writeBooleanField("cubefulExact", play.basis() == Basis.EXACT);
        json.writeNumberField("equity", Numbers.rounded(play.equity()));
        json.writeNumberField("cost", Numbers.rounded(play.equity() - bestEquity));
        json.writeStringField(
                "grade", Grade.ofCost(Math.min(0, play.equity() - bestEquity)).word());
        json.writeStringField("basis", play.basis().title());
        Json.depth(json, play.depth());
        if (play.depth().games() > 0) {
            json.writeNumberField("chancesLookahead", play.lookahead());
        }
        Json.chances(json, play.outcomes());
        json.writeEndObject();
    }
}
