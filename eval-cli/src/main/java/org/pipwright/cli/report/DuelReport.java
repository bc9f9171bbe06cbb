package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.Locale;
import java.util.Optional;
import org.pipwright.cli.duel.Contestant;
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

    /**
     * A report of a duel on the processor.
     *
     * @param a one side
     * @param b the other
     * @param settings what decided the duel
     * @param tally what came of it
     * @param plusMinus the sign for errors
     */
    public DuelReport(Contestant a, Contestant b, DuelSettings settings, Tally tally, String plusMinus) {
        this(a, b, settings, tally, plusMinus, Optional.empty());
    }

    /**
     * The same of a duel on another device.
     *
     * @param played what came of it
     * @return the report
     */
    public DuelReport on(DeviceDuel played) {
        return new DuelReport(a, b, settings, tally, plusMinus, Optional.of(played));
    }

    /**
     * Prints the result in a few lines.
     *
     * @param out where to
     */
    public void writeText(PrintWriter out) {
        out.println(Duels.heading(a, b, tally.games() + " games", settings.seed()));
        if (tally.pairs() == 0) {
            out.println("stopped before the first games were over");
            return;
        }
        out.println();
        Table table = new Table("lrrrr");
        table.row("", "single", "gammon", "backgammon", "together");
        row(table, Duels.label(a, b), tally.aWins());
        row(table, Duels.label(b, a), tally.bWins());
        table.print(out);
        out.println();
        out.println(Duels.label(a, b) + ": " + mean(tally.values()) + " points per game");
        Duels.lessLuck(tally, mean(tally.adjusted()), out);
        settings.test().ifPresent(test -> out.println(Duels.verdict(test, tally.best())));
        device.ifPresent(played -> writeDevice(played, out));
    }

    private void writeDevice(DeviceDuel played, PrintWriter out) {
        out.println();
        out.println("played on " + played.description());
        out.println(Duels.label(a, b) + ": " + agreement(played.a()));
        out.println(Duels.label(b, a) + ": " + agreement(played.b()));
    }

    private static String agreement(DeviceAgreement agreement) {
        if (!agreement.onDevice()) {
            return "answered for by the processor";
        }
        return String.format(
                Locale.ROOT,
                "%d of %d decisions differ from the processor's (%.2f %%), which costs %.5f points a decision",
                agreement.differing(),
                agreement.compared(),
                100 * share(agreement),
                agreement.cost());
    }

    private static double share(DeviceAgreement agreement) {
        return agreement.compared() == 0 ? 0 : agreement.differing() / (double) agreement.compared();
    }

    private void row(Table table, String name, Wins wins) {
        table.row(
                name + " wins, %",
                share(wins.single()),
                share(wins.gammon()),
                share(wins.backgammon()),
                share(wins.total()));
    }

    private String share(long games) {
        return Duels.share(games, tally);
    }

    private String mean(RunningMean moments) {
        return Duels.mean(moments, plusMinus);
    }

    /**
     * Prints the result as JSON, in the form of {@value #SCHEMA}.
     *
     * @param out where to
     */
    public void writeJson(PrintWriter out) {
        Json.print(out, "pipwright-duel", this::members);
    }

    private void members(JsonGenerator json) throws IOException {
        Duels.contestants(json, a, b);
        json.writeNumberField("seed", settings.seed());
        json.writeNumberField("gamesAtMost", 2 * settings.pairs());
        Duels.tally(json, tally);
        Duels.test(json, settings.test(), tally.best());
        if (device.isPresent()) {
            json.writeObjectFieldStart("device");
            json.writeStringField("description", device.get().description());
            agreement(json, "a", device.get().a());
            agreement(json, "b", device.get().b());
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
