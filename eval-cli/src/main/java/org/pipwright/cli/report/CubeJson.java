package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.Locale;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.CubeWindow;
import org.pipwright.engine.cube.GammonValues;
import org.pipwright.engine.cube.Market;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.score.MatchScore;

/** A cube decision as JSON. The resource {@value #SCHEMA} is its JSON Schema (draft 2020-12). */
public final class CubeJson {
    /** Name of the schema resource, from the root of the class path. */
    public static final String SCHEMA = "/org/pipwright/cli/cube.schema.json";

    private CubeJson() {}

    /**
     * Prints a decision.
     *
     * @param report the decision
     * @param out where to
     */
    public static void write(CubeReport report, PrintWriter out) {
        Json.print(out, "pipwright-cube", 2, json -> {
            Json.position(json, report.position());
            report.net().write(json);
            json.writeNumberField("lookahead", report.lookahead());
            json.writeStringField("basis", report.basis().title());
            json.writeBooleanField("exact", report.basis() == Basis.EXACT);
            json.writeBooleanField("simulated", report.basis() == Basis.SIMULATED);
            cube(json, report.cube());
            stakes(json, report.stakes());
            Json.chances(json, report.outcomes());
            json.writeStringField("unit", report.match() ? "chance to win the match" : "points per unit of the cube");
            values(json, report.values());
            decision(json, report);
            if (report.gammons().isPresent()) {
                GammonValues gammons = report.gammons().get();
                json.writeObjectFieldStart("gammonValues");
                json.writeNumberField("mine", Numbers.rounded(gammons.mine()));
                json.writeNumberField("theirs", Numbers.rounded(gammons.theirs()));
                json.writeEndObject();
            }
            if (!report.why().isEmpty()) {
                json.writeArrayFieldStart("sentences");
                for (String sentence : report.why()) {
                    json.writeString(sentence);
                }
                json.writeEndArray();
            }
            if (!report.match()) {
                json.writeStringField("caution", CubeWords.CAUTION);
            }
        });
    }

    static void cube(JsonGenerator json, CubeState cube) throws IOException {
        json.writeObjectFieldStart("cube");
        json.writeNumberField("value", cube.value());
        json.writeStringField("owner", cube.owner().name().toLowerCase(Locale.ROOT));
        json.writeEndObject();
    }

    static void stakes(JsonGenerator json, Stakes stakes) throws IOException {
        if (stakes instanceof MoneyStakes) {
            MoneyStakes money = (MoneyStakes) stakes;
            json.writeObjectFieldStart("money");
            json.writeBooleanField("jacoby", money.jacoby());
            json.writeBooleanField("beavers", money.beavers());
        } else {
            MatchScore score = ((MatchStakes) stakes).score();
            json.writeObjectFieldStart("match");
            json.writeNumberField("mine", score.mine());
            json.writeNumberField("theirs", score.theirs());
            json.writeBooleanField("crawford", score.crawford());
        }
        json.writeEndObject();
    }

    static void values(JsonGenerator json, CubeValues values) throws IOException {
        json.writeObjectFieldStart("values");
        json.writeNumberField("noDouble", Numbers.rounded(values.noDouble()));
        if (values.mayDouble()) {
            json.writeNumberField("doubleTake", Numbers.rounded(values.doubleTake()));
            json.writeNumberField("doublePass", Numbers.rounded(values.doublePass()));
        }
        if (values.mayDouble() && values.mayBeaver()) {
            json.writeNumberField("doubleBeaver", Numbers.rounded(values.doubleBeaver()));
        }
        json.writeEndObject();
        json.writeObjectFieldStart("costs");
        for (CubeAction action : values.choices()) {
            json.writeNumberField(CubeWords.action(action), Numbers.rounded(values.cost(action)));
        }
        json.writeEndObject();
    }

    private static void decision(JsonGenerator json, CubeReport report) throws IOException {
        CubeValues values = report.values();
        json.writeStringField("action", values.shouldDouble() ? "double" : "roll");
        if (values.mayDouble()) {
            json.writeStringField("answer", CubeWords.action(values.answer()));
            json.writeBooleanField("tooGood", values.tooGood());
            if (report.window().isPresent()) {
                window(json, report.window().get());
            }
            if (report.market().isPresent()) {
                market(json, report.market().get());
            }
        }
        json.writeStringField("verdict", CubeWords.verdict(report));
    }

    private static void market(JsonGenerator json, Market market) throws IOException {
        json.writeNumberField("marketLosers", Numbers.rounded(market.losers()));
        json.writeArrayFieldStart("marketLosingRolls");
        for (Market.Loser each : market.losing(1, 36)) {
            json.writeStartObject();
            json.writeStringField("roll", each.roll().toString());
            json.writeNumberField("replies", each.replies());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeNumberField("volatility", Numbers.rounded(market.volatility()));
    }

    private static void window(JsonGenerator json, CubeWindow window) throws IOException {
        json.writeNumberField("takePoint", Numbers.rounded(window.takePoint()));
        if (!Double.isNaN(window.from())) {
            json.writeArrayFieldStart("doublingWindow");
            json.writeNumber(Numbers.rounded(window.from()));
            json.writeNumber(Numbers.rounded(window.to()));
            json.writeEndArray();
        }
    }
}
