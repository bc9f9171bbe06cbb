package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.Locale;
import org.pipwright.cli.duel.Contestant;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.duel.Contest;
import org.pipwright.engine.duel.CubefulSettings;
import org.pipwright.engine.duel.CubefulTally;
import org.pipwright.engine.duel.CubefulWins;
import org.pipwright.engine.statistics.RunningMean;

/**
 * What {@code duel} has to say of money games or matches.
 *
 * @param a one side
 * @param b the other
 * @param settings what decided the duel
 * @param tally what came of it
 * @param plusMinus the sign for errors
 */
public record CubefulDuelReport(
        Contestant a, Contestant b, CubefulSettings settings, CubefulTally tally, String plusMinus) {
    /** Name of the resource that is the JSON Schema (draft 2020-12) of the JSON form, from the root of the class path. */
    public static final String SCHEMA = "/org/pipwright/cli/cubeful-duel.schema.json";

    private boolean match() {
        return settings.contest() instanceof Contest.Match;
    }

    /**
     * Prints the result in a few lines.
     *
     * @param out where to
     */
    public void writeText(PrintWriter out) {
        out.println(Duels.heading(a, b, played(), settings.seed()));
        if (tally.pairs() == 0) {
            out.println("stopped before the first were over");
            return;
        }
        out.println();
        Table table = new Table("lrrrrr");
        table.row("", "passed", "single", "gammon", "backgammon", "together");
        row(table, Duels.label(a, b), tally.aWins());
        row(table, Duels.label(b, a), tally.bWins());
        table.print(out);
        out.println();
        out.println(cube());
        out.println();
        out.println(
                Duels.label(a, b) + ": " + mean(tally.values()) + (match() ? " % of the matches" : " points per game"));
        Duels.lessLuck(tally, mean(tally.adjusted()) + (match() ? " %" : ""), out);
        settings.test().ifPresent(test -> out.println(Duels.verdict(test, tally.best())));
        if (!match()) {
            out.println();
            out.println(CubeWords.CAUTION);
        }
    }

    private String played() {
        if (match()) {
            return 2 * tally.pairs() + " matches to " + ((Contest.Match) settings.contest()).length();
        }
        MoneyStakes stakes = ((Contest.Money) settings.contest()).stakes();
        return 2 * tally.pairs() + " games of " + CubeWords.money(stakes);
    }

    private void row(Table table, String name, CubefulWins wins) {
        table.row(
                name + " wins, % of the games",
                share(wins.passes()),
                share(wins.single()),
                share(wins.gammon()),
                share(wins.backgammon()),
                share(wins.total()));
    }

    private String share(long games) {
        return Duels.share(games, tally);
    }

    private String cube() {
        return String.format(
                Locale.ROOT,
                "cube: turned or passed in %s %% of %d games; at their end it showed %.2f on average, %d at most",
                share(tally.cube().doubled()),
                tally.games(),
                meanCube(),
                tally.cube().highest());
    }

    private double meanCube() {
        return tally.cube().cubes() / (double) tally.games();
    }

    private String mean(RunningMean moments) {
        return match()
                ? Numbers.finePercent(moments.mean()) + " " + plusMinus + " "
                        + Numbers.finePercent(moments.standardError())
                : Duels.mean(moments, plusMinus);
    }

    /**
     * Prints the result as JSON, in the form of {@value #SCHEMA}.
     *
     * @param out where to
     */
    public void writeJson(PrintWriter out) {
        Json.print(out, "pipwright-cubeful-duel", this::members);
    }

    private void members(JsonGenerator json) throws IOException {
        Duels.contestants(json, a, b);
        contest(json);
        json.writeNumberField("seed", settings.seed());
        json.writeNumberField("playedAtMost", 2 * settings.pairs());
        json.writeNumberField("played", 2 * tally.pairs());
        json.writeNumberField("games", tally.games());
        json.writeNumberField("rolls", tally.turns());
        Duels.values(json, "value", tally);
        wins(json, "aWins", tally.aWins());
        wins(json, "bWins", tally.bWins());
        json.writeObjectFieldStart("cube");
        json.writeNumberField("doubledGames", tally.cube().doubled());
        json.writeNumberField("mean", tally.games() == 0 ? 1 : Numbers.rounded(meanCube()));
        json.writeNumberField("highest", Math.max(1, tally.cube().highest()));
        json.writeEndObject();
        Duels.test(json, settings.test(), tally.best());
    }

    private void contest(JsonGenerator json) throws IOException {
        if (match()) {
            json.writeNumberField("matchLength", ((Contest.Match) settings.contest()).length());
            return;
        }
        MoneyStakes stakes = ((Contest.Money) settings.contest()).stakes();
        json.writeObjectFieldStart("money");
        json.writeBooleanField("jacoby", stakes.jacoby());
        json.writeBooleanField("beavers", stakes.beavers());
        json.writeEndObject();
    }

    private static void wins(JsonGenerator json, String field, CubefulWins wins) throws IOException {
        json.writeObjectFieldStart(field);
        json.writeNumberField("passed", wins.passes());
        json.writeNumberField("single", wins.single());
        json.writeNumberField("gammon", wins.gammon());
        json.writeNumberField("backgammon", wins.backgammon());
        json.writeNumberField("points", wins.points());
        json.writeEndObject();
    }
}
