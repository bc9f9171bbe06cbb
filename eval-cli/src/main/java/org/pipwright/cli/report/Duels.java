package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.Locale;
import java.util.Optional;
import org.pipwright.cli.duel.Contestant;
import org.pipwright.engine.duel.Tally;
import org.pipwright.engine.duel.Wins;
import org.pipwright.engine.statistics.RunningMean;
import org.pipwright.engine.statistics.SequentialTest;

/** What the reports about duels share. */
final class Duels {
    private Duels() {}

    /** Who played what, in a line. */
    static String heading(Contestant a, Contestant b, String played, long seed) {
        return a.name() + " (" + a.depth() + ") against " + b.name() + " (" + b.depth() + "), " + played
                + " in pairs, seed " + seed;
    }

    /** The name, with the depth where both sides have the same net. */
    static String label(Contestant side, Contestant other) {
        return side.name().equals(other.name()) ? side.name() + " (" + side.depth() + ")" : side.name();
    }

    /** The result once more with variance reduction, where luck was measured. */
    static void reduced(Tally tally, String mean, PrintWriter out) {
        if (tally.luckMeasured()) {
            out.println("with variance reduction: " + mean + ", the variance "
                    + String.format(Locale.ROOT, "%.1f times smaller", tally.varianceReduction()));
        }
    }

    /** Both sides, each as a member. */
    static void contestants(JsonGenerator json, Contestant a, Contestant b) throws IOException {
        contestant(json, "a", a);
        contestant(json, "b", b);
    }

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

    /** A's results, and where luck was measured the same less luck. */
    static void values(JsonGenerator json, String field, Tally tally) throws IOException {
        moments(json, field, tally.values());
        if (tally.luckMeasured()) {
            moments(json, field + "LessLuck", tally.adjusted());
            json.writeNumberField("varianceReduction", Numbers.rounded(tally.varianceReduction()));
        }
    }

    /** A mean with its standard error. */
    static String mean(RunningMean moments, String plusMinus) {
        return Numbers.points(moments.mean())
                + String.format(Locale.ROOT, " %s %.4f", plusMinus, moments.standardError());
    }

    /** What a sequential test says, in words. */
    static String verdict(SequentialTest test, RunningMean pairs) {
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

    /** The test, if one was asked for. */
    static void test(JsonGenerator json, Optional<SequentialTest> asked, RunningMean pairs) throws IOException {
        if (asked.isEmpty()) {
            return;
        }
        SequentialTest test = asked.get();
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

    private static void moments(JsonGenerator json, String field, RunningMean moments) throws IOException {
        json.writeObjectFieldStart(field);
        json.writeNumberField("mean", Numbers.rounded(moments.mean()));
        json.writeNumberField("standardError", Numbers.rounded(moments.standardError()));
        json.writeEndObject();
    }

    static void wins(JsonGenerator json, Tally tally) throws IOException {
        wins(json, "aWins", tally.aWins());
        wins(json, "bWins", tally.bWins());
    }

    private static void wins(JsonGenerator json, String field, Wins wins) throws IOException {
        json.writeObjectFieldStart(field);
        json.writeNumberField("passed", wins.passes());
        json.writeNumberField("single", wins.single());
        json.writeNumberField("gammon", wins.gammon());
        json.writeNumberField("backgammon", wins.backgammon());
        json.writeNumberField("points", wins.points());
        json.writeEndObject();
    }
}
