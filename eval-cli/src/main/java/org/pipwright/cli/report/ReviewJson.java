package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.Locale;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.record.Heading;
import org.pipwright.engine.record.Rules;
import org.pipwright.engine.review.Decision;
import org.pipwright.engine.review.Moment;
import org.pipwright.engine.review.ReviewSettings;
import org.pipwright.engine.review.ReviewedTurn;
import org.pipwright.engine.review.SideAccount;
import org.pipwright.engine.review.TurningPoint;

/** A review as JSON. The resource {@value #SCHEMA} is its JSON Schema (draft 2020-12). */
public final class ReviewJson {
    /** Name of the schema resource, from the root of the class path. */
    public static final String SCHEMA = "/org/pipwright/cli/review.schema.json";

    private final ReviewReport report;
    private final JsonGenerator json;

    private ReviewJson(ReviewReport report, JsonGenerator json) {
        this.report = report;
        this.json = json;
    }

    /**
     * Prints a review.
     *
     * @param report the review
     * @param out where to
     */
    public static void write(ReviewReport report, PrintWriter out) {
        Json.print(out, "pipwright-review", json -> new ReviewJson(report, json).members());
    }

    private void members() throws IOException {
        Rules rules = report.heading().rules();
        if (rules.match()) {
            json.writeNumberField("matchLength", rules.length());
        } else {
            json.writeObjectFieldStart("money");
            json.writeBooleanField("jacoby", rules.jacoby());
            json.writeBooleanField("beavers", rules.beavers());
            json.writeEndObject();
        }
        report.net().write(json);
        ReviewSettings settings = report.review().settings();
        json.writeNumberField("lookahead", settings.lookahead());
        if (settings.games() > 0) {
            json.writeNumberField("games", settings.games());
            json.writeNumberField("seed", settings.seed());
        }
        json.writeStringField("unit", report.match() ? "chance to win the match" : "points per unit of the cube");
        json.writeStringField("totalUnit", report.match() ? "chance to win the match" : "points of the game");
        json.writeArrayFieldStart("sides");
        side(0);
        side(1);
        json.writeEndArray();
        turningPoints();
        json.writeArrayFieldStart("gamesReviewed");
        for (int game = 0; game < report.record().games().size(); game++) {
            game(game);
        }
        json.writeEndArray();
        if (!rules.match()) {
            json.writeStringField("caution", CubeWords.CAUTION);
        }
    }

    private void side(int side) throws IOException {
        Heading heading = report.heading();
        SideAccount account = report.review().account(side);
        json.writeStartObject();
        json.writeStringField("name", heading.name(side));
        json.writeNumberField("score", report.record().points(side));
        json.writeNumberField("plays", account.plays());
        json.writeNumberField("cubeDecisions", account.cubes());
        number("meanPoints", account.mean());
        number("meanPlayPoints", account.playMean());
        number("meanCubePoints", account.cubeMean());
        json.writeObjectFieldStart("grades");
        for (Grade grade : Grade.values()) {
            json.writeNumberField(grade.word(), account.grades().get(grade.ordinal()));
        }
        json.writeEndObject();
        number("lost", account.lost());
        number("luck", account.luck());
        json.writeEndObject();
    }

    private void turningPoints() throws IOException {
        json.writeArrayFieldStart("turningPoints");
        for (TurningPoint point : report.allTurningPoints()) {
            json.writeStartObject();
            json.writeNumberField("game", point.turn().moment().game() + 1);
            json.writeNumberField("turn", point.turn().moment().turn() + 1);
            json.writeStringField("side", report.heading().name(point.side()));
            json.writeStringField("what", point.decision().map(ReviewJson::kind).orElse("luck"));
            number("change", point.change());
            json.writeStringField("sentence", ReviewWords.event(report, point));
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static String kind(Decision decision) {
        return decision.kind().name().toLowerCase(Locale.ROOT);
    }

    private void game(int game) throws IOException {
        int[] score = report.scoreBefore(game);
        int points = report.record().games().get(game).points();
        json.writeStartObject();
        json.writeNumberField("game", game + 1);
        json.writeArrayFieldStart("scoreBefore");
        json.writeNumber(score[0]);
        json.writeNumber(score[1]);
        json.writeEndArray();
        if (points != 0) {
            json.writeStringField("winner", report.heading().name(points > 0 ? 0 : 1));
            json.writeNumberField("points", Math.abs(points));
        }
        json.writeArrayFieldStart("turns");
        for (ReviewedTurn turn : report.review().game(game)) {
            turn(turn);
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void turn(ReviewedTurn turn) throws IOException {
        Moment moment = turn.moment();
        json.writeStartObject();
        json.writeNumberField("turn", moment.turn() + 1);
        json.writeStringField("onRoll", report.heading().name(moment.onRoll()));
        Json.position(json, moment.position());
        cube(moment.cube());
        if (moment.stakes() instanceof MatchStakes) {
            json.writeBooleanField(
                    "crawford", ((MatchStakes) moment.stakes()).score().crawford());
        }
        Json.chances(json, turn.finding().chances());
        json.writeStringField("basis", turn.finding().basis().title());
        if (moment.played().isPresent()) {
            json.writeStringField("roll", moment.played().get().roll().toString());
            json.writeStringField("playText", moment.played().get().play().toString());
            number("luck", turn.luckTotal());
            number("luckPoints", turn.luckPoints());
        }
        json.writeArrayFieldStart("decisions");
        for (Decision decision : turn.decisions()) {
            decision(turn, decision);
        }
        json.writeEndArray();
        if (turn.finding().cube().isPresent()) {
            values(turn.finding().cube().get());
        }
        if (!turn.finding().options().isEmpty()) {
            json.writeArrayFieldStart("plays");
            for (PlayVerdict option : turn.finding().options()) {
                option(option);
            }
            json.writeEndArray();
        }
        json.writeEndObject();
    }

    private void cube(CubeState cube) throws IOException {
        json.writeObjectFieldStart("cube");
        json.writeNumberField("value", cube.value());
        json.writeStringField("owner", cube.owner().name().toLowerCase(Locale.ROOT));
        json.writeEndObject();
    }

    private void decision(ReviewedTurn turn, Decision decision) throws IOException {
        json.writeStartObject();
        json.writeStringField("kind", kind(decision));
        json.writeStringField("side", report.heading().name(decision.side()));
        json.writeStringField("did", ReviewWords.did(turn, decision));
        json.writeStringField("best", ReviewWords.best(turn, decision));
        number("cost", decision.cost());
        number("points", decision.points());
        number("total", decision.total());
        json.writeStringField("grade", decision.grade().word());
        json.writeBooleanField("counted", decision.counted());
        json.writeArrayFieldStart("sentences");
        for (String sentence : ReviewWhy.sentences(report, turn, decision)) {
            json.writeString(sentence);
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void values(CubeValues values) throws IOException {
        json.writeObjectFieldStart("cubeValues");
        number("noDouble", values.noDouble());
        number("doubleTake", values.doubleTake());
        number("doublePass", values.doublePass());
        if (values.mayBeaver()) {
            number("doubleBeaver", values.doubleBeaver());
        }
        json.writeStringField("action", CubeWords.action(values.shouldDouble() ? CubeAction.DOUBLE : CubeAction.ROLL));
        json.writeStringField("answer", CubeWords.action(values.answer()));
        json.writeEndObject();
    }

    private void option(PlayVerdict option) throws IOException {
        json.writeStartObject();
        json.writeStringField("playText", option.play().toString());
        number("value", option.value());
        json.writeStringField("basis", option.basis().title());
        Json.depth(json, option.depth());
        Json.chances(json, option.outcomes());
        json.writeEndObject();
    }

    private void number(String name, double number) throws IOException {
        json.writeNumberField(name, Numbers.rounded(number));
    }
}
