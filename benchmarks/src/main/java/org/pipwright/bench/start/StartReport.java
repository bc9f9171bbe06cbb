package org.pipwright.bench.start;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.pipwright.bench.games.Ratio;
import org.pipwright.engine.evaluation.Outcomes;

/**
 * The start position for people and for programs.
 *
 * @param net name of the net
 * @param odds what it says before the first roll
 * @param who how both sides of the games played
 * @param played the games
 */
record StartReport(String net, List<StartOdds> odds, String who, Played played) {
    /** Figures that are no shares of games or rolls. */
    private static final Set<String> NUMBERS =
            Set.of("points", "rolls a game", "legal plays a roll", "legal plays a roll that can be played");

    /** Tables in Markdown, chances in per cent. */
    String text() {
        StringBuilder text = new StringBuilder("Chances of the side that makes the first roll, before it, by net " + net
                + ", cubeless:\n\n"
                + "| lookahead | first roll | win single | gammon | backgammon | lose single | gammon | backgammon"
                + " | win at all | equity |\n"
                + "| ---: | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |\n");
        for (StartOdds each : odds) {
            Outcomes o = each.outcomes();
            text.append(String.format(
                    Locale.ROOT,
                    "| %d | %s | %.2f | %.2f | %.2f | %.2f | %.2f | %.2f | %.2f | %+.4f |%n",
                    each.lookahead(),
                    each.opening().words(),
                    100 * o.winSingle(),
                    100 * o.winGammon(),
                    100 * o.winBackgammon(),
                    100 * o.loseSingle(),
                    100 * o.loseGammon(),
                    100 * o.loseBackgammon(),
                    100 * o.win(),
                    o.equity()));
        }
        text.append(String.format(
                Locale.ROOT,
                "%n%,d games, %s, cubeless, begun with a roll that is no double; wins, losses and points are those of the"
                        + " side that begins, errors are standard errors by games:%n%n"
                        + "| figure | found | printed | source |%n| --- | ---: | --- | --- |%n",
                played.games(),
                who));
        Map<String, Printed> printed = Printed.all();
        played.figures().forEach((name, ratio) -> {
            Printed other = printed.getOrDefault(name, new Printed(name, "", ""));
            text.append(
                    "| " + name + " | " + found(name, ratio) + " | " + other.text() + " | " + other.source() + " |\n");
        });
        text.append(
                "\nLegal plays are counted by the positions they lead to; a roll that cannot be played has none.\n");
        return text.toString();
    }

    private static String found(String name, Ratio ratio) {
        return NUMBERS.contains(name)
                ? String.format(Locale.ROOT, "%.4f ± %.4f", ratio.value(), ratio.error())
                : String.format(Locale.ROOT, "%.2f ± %.2f %%", 100 * ratio.value(), 100 * ratio.error());
    }

    /** The same with shares and chances from 0 to 1. */
    String json() throws IOException {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text).useDefaultPrettyPrinter()) {
            json.writeStartObject();
            json.writeStringField("net", net);
            json.writeArrayFieldStart("beforeTheFirstRoll");
            for (StartOdds each : odds) {
                write(json, each);
            }
            json.writeEndArray();
            json.writeStringField("players", who);
            json.writeNumberField("games", played.games());
            json.writeArrayFieldStart("figures");
            Map<String, Printed> printed = Printed.all();
            for (Map.Entry<String, Ratio> figure : played.figures().entrySet()) {
                json.writeStartObject();
                json.writeStringField("figure", figure.getKey());
                json.writeNumberField("value", figure.getValue().value());
                json.writeNumberField("error", figure.getValue().error());
                Printed other = printed.get(figure.getKey());
                if (other != null) {
                    json.writeStringField("printed", other.text());
                    json.writeStringField("source", other.source());
                }
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        return text + "\n";
    }

    private static void write(JsonGenerator json, StartOdds odds) throws IOException {
        Outcomes o = odds.outcomes();
        json.writeStartObject();
        json.writeNumberField("lookahead", odds.lookahead());
        json.writeStringField("firstRoll", odds.opening().words());
        json.writeNumberField("winSingle", o.winSingle());
        json.writeNumberField("winGammon", o.winGammon());
        json.writeNumberField("winBackgammon", o.winBackgammon());
        json.writeNumberField("loseSingle", o.loseSingle());
        json.writeNumberField("loseGammon", o.loseGammon());
        json.writeNumberField("loseBackgammon", o.loseBackgammon());
        json.writeNumberField("equity", o.equity());
        json.writeEndObject();
    }
}
