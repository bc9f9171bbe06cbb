package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Depth;

/**
 * What {@code odds} has to say.
 *
 * @param position the position before the roll
 * @param net the net that judged
 * @param outcomes the six chances of the side on roll
 * @param equity points per game for the side on roll
 * @param depth how deeply they were evaluated
 * @param basis what the chances rest on
 */
public record OddsReport(Position position, NetLabel net, Outcomes outcomes, double equity, Depth depth, Basis basis) {
    /** Name of the resource that is the JSON Schema (draft 2020-12) of the JSON form, from the root of the class path. */
    public static final String SCHEMA = "/org/pipwright/cli/odds.schema.json";

    private static final String FORM = "pipwright-odds";

    /**
     * The report of a verdict on a position before the roll, without a cube.
     *
     * @param verdict what the judge said
     * @param net the net that judged
     * @return the report
     */
    public static OddsReport of(Verdict verdict, NetLabel net) {
        return new OddsReport(
                verdict.question().position(),
                net,
                verdict.outcomes(),
                verdict.value(),
                verdict.depth(),
                verdict.basis());
    }

    /**
     * Prints the chances as a small table.
     *
     * @param out where to
     */
    public void writeText(PrintWriter out) {
        Headings.write(position, "on roll", out);
        out.println("net " + net.name() + ", " + depth);
        out.println();
        Table table = new Table("lrrrr");
        table.row("", "single", "gammon", "backgammon", "together");
        row(table, "win, %", outcomes);
        row(table, "lose, %", outcomes.swapped());
        table.print(out);
        out.println();
        String error = depth.games() > 0 ? ", standard error " + Numbers.size(depth.error()) : "";
        out.println("equity " + Numbers.points(equity) + " points per game, with the cube left out" + error);
        out.println("chances " + basis.title());
    }

    static void row(Table table, String label, Outcomes side) {
        table.row(
                label,
                Numbers.percent(side.winSingle()),
                Numbers.percent(side.winGammon()),
                Numbers.percent(side.winBackgammon()),
                Numbers.percent(side.win()));
    }

    /**
     * Prints the chances as JSON, in the form of {@value #SCHEMA}.
     *
     * @param out where to
     */
    public void writeJson(PrintWriter out) {
        Json.print(out, FORM, this::members);
    }

    /**
     * Writes the same object as the answer to a line of a batch.
     *
     * @param json where to
     * @param line number of the line, from 1
     * @throws IOException if the generator cannot write
     */
    public void write(JsonGenerator json, long line) throws IOException {
        Json.line(json, FORM, 1, line, this::members);
    }

    private void members(JsonGenerator json) throws IOException {
        Json.position(json, position);
        net.write(json);
        Json.number(json, "equity", equity);
        Json.number(json, "win", outcomes.win());
        json.writeStringField("basis", basis.title());
        Json.depth(json, depth);
        Json.chances(json, outcomes);
    }
}
