package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.pipwright.engine.explain.Blot;
import org.pipwright.engine.explain.BoardFacts;
import org.pipwright.engine.explain.ExplainedPlay;
import org.pipwright.engine.explain.Explanation;
import org.pipwright.engine.explain.Motive;
import org.pipwright.engine.explain.PlayFacts;
import org.pipwright.engine.explain.Prime;
import org.pipwright.engine.explain.Swing;

/** An explanation as a member of a JSON report. */
final class ExplainJson {
    private ExplainJson() {}

    static void write(JsonGenerator json, Explanation explanation) throws IOException {
        json.writeObjectFieldStart("explanation");
        json.writeNumberField("replyLookahead", explanation.lookahead());
        json.writeArrayFieldStart("plays");
        play(json, explanation.best(), List.of(), PlayWords.sentences(explanation.best()));
        for (ExplainedPlay rival : explanation.rivals()) {
            play(
                    json,
                    rival,
                    RivalWords.leads(explanation.best(), rival, explanation.gammons()),
                    RivalWords.sentences(explanation.best(), rival, explanation.gammons()));
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void play(JsonGenerator json, ExplainedPlay play, List<Motive> leads, List<String> sentences)
            throws IOException {
        PlayFacts facts = play.facts();
        json.writeStartObject();
        json.writeStringField("playText", facts.play().toString());
        numbers(json, "makes", facts.made());
        numbers(json, "givesUp", facts.broken());
        json.writeNumberField("hits", facts.hits());
        json.writeNumberField("pipsTaken", facts.pipsTaken());
        json.writeNumberField("bearsOff", facts.borneOff());
        blots(json, facts);
        json.writeNumberField("shots", facts.exposure().shots());
        json.writeNumberField("costlyShots", facts.exposure().costly());
        json.writeNumberField("risk", Numbers.rounded(facts.exposure().risk()));
        json.writeNumberField("newPointRolls", facts.newPoints());
        json.writeNumberField("idleRolls", facts.exposure().idle());
        board(json, facts.after());
        swings(json, play);
        json.writeArrayFieldStart("mainly");
        for (Motive lead : leads) {
            json.writeString(lead.name().toLowerCase(Locale.ROOT).replace('_', ' '));
        }
        json.writeEndArray();
        json.writeArrayFieldStart("sentences");
        for (String sentence : sentences) {
            json.writeString(sentence);
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void numbers(JsonGenerator json, String name, List<Integer> numbers) throws IOException {
        json.writeArrayFieldStart(name);
        for (int number : numbers) {
            json.writeNumber(number);
        }
        json.writeEndArray();
    }

    private static void blots(JsonGenerator json, PlayFacts facts) throws IOException {
        json.writeArrayFieldStart("blots");
        for (Blot blot : facts.exposure().blots()) {
            json.writeStartObject();
            json.writeNumberField("point", blot.point());
            json.writeNumberField("shots", blot.shots());
            json.writeNumberField("pips", blot.pips());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void board(JsonGenerator json, BoardFacts board) throws IOException {
        prime(json, "prime", board.prime());
        prime(json, "opponentPrime", board.theirPrime());
        numbers(json, "anchors", board.mine().anchors());
        json.writeNumberField("pips", board.pips());
        json.writeNumberField("opponentPips", board.theirPips());
        json.writeNumberField("lead", board.lead());
    }

    private static void prime(JsonGenerator json, String name, Prime prime) throws IOException {
        json.writeObjectFieldStart(name);
        json.writeNumberField("length", prime.length());
        json.writeNumberField("from", prime.from());
        json.writeNumberField("trapped", prime.trapped());
        json.writeEndObject();
    }

    private static void swings(JsonGenerator json, ExplainedPlay play) throws IOException {
        json.writeArrayFieldStart("replies");
        for (Swing swing : play.swings().rolls()) {
            json.writeStartObject();
            json.writeStringField("roll", swing.roll().toString());
            json.writeStringField("reply", swing.reply().toString());
            json.writeNumberField("equity", Numbers.rounded(swing.equity()));
            json.writeNumberField("change", Numbers.rounded(swing.change()));
            json.writeEndObject();
        }
        json.writeEndArray();
    }
}
