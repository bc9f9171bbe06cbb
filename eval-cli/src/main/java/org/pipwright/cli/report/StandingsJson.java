package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import org.pipwright.engine.standings.Match;
import org.pipwright.engine.standings.Ratings;

/** {@link StandingsReport} as JSON. */
public final class StandingsJson {
    /** Name of the resource that is the JSON Schema (draft 2020-12), from the root of the class path. */
    public static final String SCHEMA = "/org/pipwright/cli/standings.schema.json";

    private final StandingsReport report;

    private StandingsJson(StandingsReport report) {
        this.report = report;
    }

    /**
     * Prints the report.
     *
     * @param report what to print
     * @param out where to
     */
    public static void write(StandingsReport report, PrintWriter out) {
        Json.print(out, "pipwright-standings", new StandingsJson(report)::members);
    }

    private void members(JsonGenerator json) throws IOException {
        json.writeStringField("anchor", name(report.anchor()));
        json.writeNumberField("seed", report.seed());
        json.writeArrayFieldStart("players");
        for (int player : report.order()) {
            player(json, player);
        }
        json.writeEndArray();
        if (report.ratings().isPresent()) {
            fit(json, report.ratings().get());
        }
        json.writeArrayFieldStart("duels");
        for (Match match : report.matches()) {
            json.writeStartObject();
            json.writeStringField("a", name(match.a()));
            json.writeStringField("b", name(match.b()));
            json.writeNumberField("seed", match.seed());
            json.writeNumberField("games", match.tally().games());
            json.writeNumberField("rolls", match.tally().turns());
            Duels.values(json, "points", match.tally());
            Duels.wins(json, match.tally());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private String name(int player) {
        return report.players().get(player).name();
    }

    private void player(JsonGenerator json, int player) throws IOException {
        json.writeStartObject();
        Duels.contestantMembers(json, report.players().get(player));
        if (report.ratings().isPresent()) {
            Ratings known = report.ratings().get();
            json.writeNumberField("rating", Numbers.rounded(known.points(player)));
            json.writeNumberField("standardError", Numbers.rounded(known.error(player)));
        }
        json.writeEndObject();
    }

    private static void fit(JsonGenerator json, Ratings known) throws IOException {
        json.writeObjectFieldStart("fit");
        json.writeNumberField("chiSquared", Numbers.rounded(known.chiSquared()));
        json.writeNumberField("degreesOfFreedom", known.freedom());
        json.writeNumberField("chance", Numbers.rounded(known.chance()));
        json.writeEndObject();
    }
}
