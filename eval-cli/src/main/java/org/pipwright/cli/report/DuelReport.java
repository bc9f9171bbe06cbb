package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.pipwright.cli.duel.Contestant;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.duel.Contest;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Tally;
import org.pipwright.engine.duel.Wins;
import org.pipwright.engine.statistics.RunningMean;
import org.pipwright.training.device.DeviceAgreement;
import org.pipwright.training.device.DeviceDuel;

/**
 * What {@code duel} has to say.
 *
 * @param a one side
 * @param b the other
 * @param settings what decided the duel
 * @param tally what came of it
 * @param plusMinus the sign for errors
 * @param device the same of a duel on another device than the processor, else empty
 */
public record DuelReport(
        Contestant a, Contestant b, DuelSettings settings, Tally tally, String plusMinus, Optional<DeviceDuel> device) {
    /** Name of the resource that is the JSON Schema (draft 2020-12) of the JSON form, from the root of the class path. */
    public static final String SCHEMA = "/org/pipwright/cli/duel.schema.json";

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
        writeWins(out);
        out.println();
        if (withCube()) {
            out.println(cube());
            out.println();
        }
        out.println(
                Duels.label(a, b) + ": " + mean(tally.values()) + (match() ? " % of the matches" : " points per game"));
        Duels.reduced(tally, mean(tally.adjusted()) + (match() ? " %" : ""), out);
        settings.test().ifPresent(test -> out.println(Duels.verdict(test, tally.best())));
        // Not as a lambda: its type would load the training module for duels without a device too.
        if (device.isPresent()) {
            writeDevice(device.get(), out);
        }
        if (settings.contest() instanceof Contest.Money) {
            out.println();
            out.println(CubeWords.CAUTION);
        }
    }

    private boolean withCube() {
        return settings.contest().withCube();
    }

    private String played() {
        long played = 2 * tally.pairs();
        Contest contest = settings.contest();
        if (contest instanceof Contest.Match) {
            return played + " matches to " + ((Contest.Match) contest).length();
        }
        return played + " games" + (withCube() ? " of " + CubeWords.money(((Contest.Money) contest).stakes()) : "");
    }

    private void writeWins(PrintWriter out) {
        Table table = new Table(withCube() ? "lrrrrr" : "lrrrr");
        List<String> heads = List.of("", "passed", "single", "gammon", "backgammon", "together");
        table.row(ofCube(heads));
        table.row(ofCube(wins(Duels.label(a, b), tally.aWins())));
        table.row(ofCube(wins(Duels.label(b, a), tally.bWins())));
        table.print(out);
    }

    /** Without the cube nobody passes. */
    private Object[] ofCube(List<String> cells) {
        List<String> shown = new ArrayList<>(cells);
        if (!withCube()) {
            shown.remove(1);
        }
        return shown.toArray();
    }

    private List<String> wins(String name, Wins wins) {
        return List.of(
                name + (withCube() ? " wins, % of the games" : " wins, %"),
                share(wins.passes()),
                share(wins.single()),
                share(wins.gammon()),
                share(wins.backgammon()),
                share(wins.total()));
    }

    private String share(long games) {
        return Numbers.percent(games / (double) tally.games());
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

    private void writeDevice(DeviceDuel played, PrintWriter out) {
        out.println();
        out.println("played on " + played.description());
        out.println(Duels.label(a, b) + ": " + played.a().words());
        out.println(Duels.label(b, a) + ": " + played.b().words());
    }

    /**
     * Prints the result as JSON, in the form of {@value #SCHEMA}.
     *
     * @param out where to
     */
    public void writeJson(PrintWriter out) {
        Json.print(out, "pipwright-duel", 2, this::members);
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
        Duels.wins(json, tally);
        if (withCube()) {
            json.writeObjectFieldStart("cube");
            json.writeNumberField("doubledGames", tally.cube().doubled());
            json.writeNumberField("mean", tally.games() == 0 ? 1 : Numbers.rounded(meanCube()));
            json.writeNumberField("highest", Math.max(1, tally.cube().highest()));
            json.writeEndObject();
        }
        Duels.test(json, settings.test(), tally.best());
        if (device.isPresent()) {
            json.writeObjectFieldStart("device");
            json.writeStringField("description", device.get().description());
            agreement(json, "a", device.get().a());
            agreement(json, "b", device.get().b());
            json.writeEndObject();
        }
    }

    private void contest(JsonGenerator json) throws IOException {
        Contest contest = settings.contest();
        if (contest instanceof Contest.Match) {
            json.writeNumberField("matchLength", ((Contest.Match) contest).length());
        } else if (contest instanceof Contest.Money) {
            MoneyStakes stakes = ((Contest.Money) contest).stakes();
            json.writeObjectFieldStart("money");
            json.writeBooleanField("jacoby", stakes.jacoby());
            json.writeBooleanField("beavers", stakes.beavers());
            json.writeEndObject();
        }
    }

    private static void agreement(JsonGenerator json, String field, DeviceAgreement agreement) throws IOException {
        json.writeObjectFieldStart(field);
        json.writeBooleanField("onDevice", agreement.onDevice());
        if (agreement.onDevice()) {
            json.writeNumberField("compared", agreement.compared());
            json.writeNumberField("differing", agreement.differing());
            json.writeNumberField("cost", Numbers.rounded(agreement.cost()));
        }
        json.writeEndObject();
    }
}
