package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.Locale;
import org.pipwright.cli.duel.Contestant;
import org.pipwright.engine.duel.Moments;
import org.pipwright.engine.duel.SequentialTest;
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

    /** A mean with its standard error. */
    static String mean(Moments moments, String plusMinus) {
        return Numbers.points(moments.mean())
                + String.format(Locale.ROOT, " %s %.4f", plusMinus, moments.standardError());
    }

    /** What a sequential test says, in words. */
    static String verdict(SequentialTest test, Moments pairs) {
        String[] words = {Numbers.points(test.low()), Numbers.points(test.high())};
        String ratio = String.format(
                Locale.ROOT, "%+.2f within %+.2f and %+.2f", test.ratio(pairs), test.lowerLimit(), test.upperLimit());
        switch (test.verdict(pairs)) {
            case HIGH:
                return "sure: " + words[1] + " rather than " + words[0] + " (log-likelihood ratio " + ratio + ")";
            case LOW:
                return "sure: " + words[0] + " rather than " + words[1] + " (log-likelihood ratio " + ratio + ")";
            default:
                return "not sure yet whether " + words[0] + " or " + words[1] + " (log-likelihood ratio " + ratio + ")";
        }
    }

    static void test(JsonGenerator json, SequentialTest test, Moments pairs) throws IOException {
        json.writeObjectFieldStart("sequentialTest");
        json.writeNumberField("low", test.low());
        json.writeNumberField("high", test.high());
        json.writeNumberField("alpha", test.alpha());
        json.writeNumberField("beta", test.beta());
        json.writeNumberField("logLikelihoodRatio", Numbers.rounded(test.ratio(pairs)));
        json.writeNumberField("lowerLimit", Numbers.rounded(test.lowerLimit()));
        json.writeNumberField("upperLimit", Numbers.rounded(test.upperLimit()));
        json.writeStringField("verdict", test.verdict(pairs).name().toLowerCase(Locale.ROOT));
        json.writeEndObject();
    }

    static void moments(JsonGenerator json, String field, Moments moments) throws IOException {
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
