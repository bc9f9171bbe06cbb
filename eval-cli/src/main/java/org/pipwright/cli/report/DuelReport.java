package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.Locale;
import org.pipwright.cli.duel.Contestant;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Moments;
import org.pipwright.engine.duel.Tally;
import org.pipwright.engine.duel.Wins;

/**
 * What {@code duel} has to say.
 *
 * @param a one side
 * @param b the other
 * @param settings what decided the duel
 * @param tally what came of it
 * @param plusMinus the sign for errors
 */
public record DuelReport(Contestant a, Contestant b, DuelSettings settings, Tally tally, String plusMinus) {
    /** Name of the resource that is the JSON Schema (draft 2020-12) of the JSON form, from the root of the class path. */
    public static final String SCHEMA = "/org/pipwright/cli/duel.schema.json";

    /**
     * Prints the result in a few lines.
     *
     * @param out where to
     */
    public void writeText(PrintWriter out) {
        out.println(a.name() + " (" + a.depth() + ") against " + b.name() + " (" + b.depth() + "), " + tally.games()
                + " games in pairs, seed " + settings.seed());
        if (tally.pairs() == 0) {
            out.println("stopped before the first games were over");
            return;
        }
        out.println();
        Table table = new Table("lrrrr");
        table.row("", "single", "gammon", "backgammon", "together");
        row(table, label(a), tally.aWins());
        row(table, label(b), tally.bWins());
        table.print(out);
        out.println();
        out.println(label(a) + ": " + mean(tally.points()) + " points per game");
        if (tally.luckMeasured()) {
            out.println("less luck: " + mean(tally.adjusted()) + ", with a variance "
                    + String.format(Locale.ROOT, "%.1f times smaller", tally.varianceReduction()));
        }
        settings.test().ifPresent(test -> out.println(Duels.verdict(test, tally.best())));
    }

    /** The name, with the depth where both sides have the same net. */
    private String label(Contestant side) {
        return a.name().equals(b.name()) ? side.name() + " (" + side.depth() + ")" : side.name();
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
        return Numbers.percent(games / (double) tally.games());
    }

    private String mean(Moments moments) {
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
        Duels.contestant(json, "a", a);
        Duels.contestant(json, "b", b);
        json.writeNumberField("seed", settings.seed());
        json.writeNumberField("gamesAtMost", 2 * settings.pairs());
        Duels.tally(json, tally);
        if (settings.test().isPresent()) {
            Duels.test(json, settings.test().get(), tally.best());
        }
    }
}
