package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import org.pipwright.cli.duel.Contestant;
import org.pipwright.engine.duel.Moments;
import org.pipwright.engine.duel.Tally;
import org.pipwright.engine.duel.Wins;

/** What the JSON reports about duels share. */
final class Duels {
    private Duels() {}

    static void contestant(JsonGenerator json, String field, Contestant contestant) throws IOException {
        json.writeObjectFieldStart(field);
        contestantMembers(json, contestant);
        json.writeEndObject();
    }

    static void contestantMembers(JsonGenerator json, Contestant contestant) throws IOException {
        json.writeStringField("name", contestant.name());
        if (contestant.net().isPresent()) {
            json.writeStringField("sha256", contestant.net().get().sha256());
            json.writeNumberField("lookahead", contestant.net().get().lookahead());
        }
    }

    static void tally(JsonGenerator json, Tally tally) throws IOException {
        json.writeNumberField("games", tally.games());
        json.writeNumberField("rolls", tally.turns());
        moments(json, "points", tally.points());
        if (tally.luckMeasured()) {
            moments(json, "pointsLessLuck", tally.adjusted());
            json.writeNumberField("varianceReduction", Numbers.rounded(tally.varianceReduction()));
        }
        wins(json, "aWins", tally.aWins());
        wins(json, "bWins", tally.bWins());
    }

    private static void moments(JsonGenerator json, String field, Moments moments) throws IOException {
        json.writeObjectFieldStart(field);
        json.writeNumberField("mean", Numbers.rounded(moments.mean()));
        json.writeNumberField("standardError", Numbers.rounded(moments.standardError()));
        json.writeEndObject();
    }

    private static void wins(JsonGenerator json, String field, Wins wins) throws IOException {
        json.writeObjectFieldStart(field);
        json.writeNumberField("single", wins.single());
        json.writeNumberField("gammon", wins.gammon());
        json.writeNumberField("backgammon", wins.backgammon());
        json.writeEndObject();
    }
}
