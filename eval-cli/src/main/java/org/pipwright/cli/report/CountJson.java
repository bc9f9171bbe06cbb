package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import org.pipwright.engine.bearoff.ExactRace;
import org.pipwright.engine.bearoff.RollSpread;
import org.pipwright.engine.bearoff.SideOutlook;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.measures.EffectivePips;
import org.pipwright.engine.measures.Kleinman;
import org.pipwright.engine.roll.Roll;

/** Counts as JSON. The resource {@value #SCHEMA} is its JSON Schema (draft 2020-12). */
public final class CountJson {
    /** Name of the schema resource, from the root of the class path. */
    public static final String SCHEMA = "/org/pipwright/cli/count.schema.json";

    private CountJson() {}

    /**
     * Prints the facts of a position.
     *
     * @param report the facts
     * @param out where to
     */
    public static void write(CountReport report, PrintWriter out) {
        Json.print(out, "pipwright-count", 2, json -> {
            Json.position(json, report.position());
            json.writeNumberField(
                    "lead", report.opponent().pips() - report.onRoll().pips());
            side(json, "onRoll", report.onRoll(), report);
            side(json, "opponent", report.opponent(), report);
            if (report.race().isPresent()) {
                race(json, report, report.race().get());
            }
        });
    }

    private static void side(JsonGenerator json, String name, CountReport.Side side, CountReport report)
            throws IOException {
        json.writeObjectFieldStart(name);
        json.writeNumberField("pips", side.pips());
        json.writeNumberField("crossoversHome", side.crossovers().home());
        json.writeNumberField("crossoversOff", side.crossovers().off());
        if (report.race().isEmpty()) {
            points(json, "made", side.structure().made());
            points(json, "blots", side.structure().blots());
            points(json, "anchors", side.structure().anchors());
            json.writeNumberField("primeLength", side.structure().primeLength());
            json.writeNumberField("primeFrom", side.structure().primeFrom());
            json.writeNumberField("checkersBack", side.structure().checkersBack());
            json.writeNumberField("onBar", side.structure().onBar());
            json.writeNumberField("hitsOf36", side.shots().of36());
            json.writeArrayFieldStart("hits");
            for (Roll roll : side.shots().rolls()) {
                json.writeString(roll.toString());
            }
            json.writeEndArray();
        } else {
            boolean mine = name.equals("onRoll");
            CountReport.Race race = report.race().get();
            outlook(
                    json,
                    side.pips(),
                    mine ? race.outlook().onRoll() : race.outlook().opponent());
            json.writeNumberField(
                    "keithCount", mine ? race.keith().onRoll() : race.keith().opponent());
        }
        json.writeEndObject();
    }

    private static void points(JsonGenerator json, String name, List<Integer> points) throws IOException {
        json.writeArrayFieldStart(name);
        for (int point : points) {
            json.writeNumber(point);
        }
        json.writeEndArray();
    }

    private static void outlook(JsonGenerator json, int pips, SideOutlook side) throws IOException {
        EffectivePips effective = new EffectivePips(pips, side.off().mean());
        json.writeStringField("basis", side.basis().title());
        json.writeNumberField("meanRolls", Numbers.rounded(effective.rolls()));
        json.writeNumberField("meanRollsError", Numbers.rounded(side.error()));
        json.writeNumberField("effectivePips", Numbers.rounded(effective.count()));
        json.writeNumberField("wastage", Numbers.rounded(effective.wastage()));
        json.writeArrayFieldStart("rolls");
        RollSpread spread = side.off();
        for (int rolls = 0; rolls <= spread.most(); rolls++) {
            json.writeNumber(Numbers.rounded(spread.exactly(rolls)));
        }
        json.writeEndArray();
    }

    private static void race(JsonGenerator json, CountReport report, CountReport.Race race) throws IOException {
        int mine = report.onRoll().pips();
        int theirs = report.opponent().pips();
        json.writeObjectFieldStart("race");
        json.writeStringField("basis", race.outlook().basis().title());
        json.writeNumberField("win", Numbers.rounded(race.outlook().outcomes().win()));
        Json.chances(json, race.outlook().outcomes());
        json.writeNumberField("kleinmanWin", Numbers.rounded(Kleinman.win(mine, theirs)));
        json.writeNumberField("barePipsWin", Numbers.rounded(race.bare().win(mine, theirs)));
        advice(
                json,
                "keithAdvice",
                race.keith().doubles(),
                race.keith().redoubles(),
                race.keith().takes());
        advice(
                json,
                "barePipsAdvice",
                race.bare().centred(mine, theirs).shouldDouble(),
                race.bare().owned(mine, theirs).shouldDouble(),
                race.bare().centred(mine, theirs).answer() == CubeAction.TAKE);
        if (race.exact().isPresent()) {
            ExactRace exact = race.exact().get();
            json.writeObjectFieldStart("cube");
            json.writeNumberField("centred", Numbers.rounded(exact.value().centred()));
            json.writeNumberField("mine", Numbers.rounded(exact.value().mine()));
            json.writeNumberField("theirs", Numbers.rounded(exact.value().theirs()));
            json.writeNumberField(
                    "noDoubleCentred", Numbers.rounded(exact.doubling().noDoubleCentred()));
            json.writeNumberField(
                    "noDoubleMine", Numbers.rounded(exact.doubling().noDoubleMine()));
            json.writeNumberField("doubleTake", Numbers.rounded(exact.doubling().doubleTake()));
            json.writeEndObject();
        }
        json.writeEndObject();
    }

    private static void advice(JsonGenerator json, String name, boolean doubles, boolean redoubles, boolean takes)
            throws IOException {
        json.writeObjectFieldStart(name);
        json.writeBooleanField("double", doubles);
        json.writeBooleanField("redouble", redoubles);
        json.writeBooleanField("take", takes);
        json.writeEndObject();
    }
}
