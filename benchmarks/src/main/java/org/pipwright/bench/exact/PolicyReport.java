package org.pipwright.bench.exact;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.util.Locale;
import org.pipwright.engine.reduced.ErrorSummary;
import org.pipwright.engine.reduced.PolicyValue;

/** A policy's value for people and for programs. */
final class PolicyReport {
    private PolicyReport() {}

    static String text(int checkers, PolicyValue value) {
        return String.format(
                Locale.ROOT,
                "%d checkers a side, greedy plays against the best player, exactly; games start with a roll that is no double%n"
                        + "loses %.6f points a game (starting %+.6f, second %+.6f)%n"
                        + "loses %.6f points a decision, at %.2f decisions a game%n"
                        + "equity error where its games go: mean %.5f, 99th percentile %.5f%n"
                        + "equity error over all positions: mean %.5f, 99th percentile %.5f%n",
                checkers,
                value.lostPerGame(),
                value.equityStarting(),
                value.equitySecond(),
                value.lostPerDecision(),
                value.decisionsPerGame(),
                value.visited().mean(),
                value.visited().p99(),
                value.everywhere().mean(),
                value.everywhere().p99());
    }

    static String json(int checkers, PolicyValue value) throws IOException {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.writeStartObject();
            json.writeNumberField("checkers", checkers);
            json.writeNumberField("lostPerGame", value.lostPerGame());
            json.writeNumberField("equityStarting", value.equityStarting());
            json.writeNumberField("equitySecond", value.equitySecond());
            json.writeNumberField("lostPerDecision", value.lostPerDecision());
            json.writeNumberField("decisionsPerGame", value.decisionsPerGame());
            write(json, "errorWhereItsGamesGo", value.visited());
            write(json, "errorOverAllPositions", value.everywhere());
            json.writeEndObject();
        }
        return text + System.lineSeparator();
    }

    private static void write(JsonGenerator json, String name, ErrorSummary error) throws IOException {
        json.writeObjectFieldStart(name);
        json.writeNumberField("mean", error.mean());
        json.writeNumberField("p99", error.p99());
        json.writeEndObject();
    }
}
