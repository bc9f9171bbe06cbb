package org.pipwright.cli.command;

import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.report.CountJson;
import org.pipwright.cli.report.CountReport;
import org.pipwright.cli.report.CountText;
import org.pipwright.engine.position.Position;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Position to the measures players use. */
@Command(
        name = "count",
        customSynopsis = "pipwright count POSITION [options]",
        header = "Count a position: pips, race measures, shots, structure.",
        description = {
            "Facts and rules of thumb, without a net. With contact: made points, primes, anchors, blots and the"
                    + " rolls that hit. In a race: chances that are exact, from distributions (each side bears off in the"
                    + " fewest rolls on average) or estimated, and beside them:",
            "- effective pips (Trice): mean rolls to bear off times 49/6; wastage: what they exceed the pips by;",
            "- Kleinman's estimate (Vision Laughs at Counting): the normal distribution at D / sqrt(2 S), D the lead plus"
                    + " 4, S the sum of the pips less 4;",
            "- the Keith count (Cube Handling in Noncontact Positions, 2004) and its advice;",
            "- bare pips (Zadeh and Kobliska, Management Science 23, 1977, with true dice): the race of two numbers, solved"
                    + " with the cube.",
            "A crossover takes a checker from one quarter of the board into the next, or off (common practice)."
        },
        footer = {"Examples:", "  pipwright count start", "  pipwright count 2@2 1@5 2@6 / 1@1 3@4 --json"})
public final class CountCommand extends CliCommand {
    @Mixin
    private PositionArgument position;

    @Mixin
    private TablesOption tables;

    @Option(names = "--json", description = "Print JSON, in the form that count.schema.json describes.")
    private boolean json;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public CountCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        Position read = position.read(console());
        if (read.finished()) {
            throw new UserError("the game is over in this position: there is nothing left to count");
        }
        CountReport report = CountReport.of(read, () -> tables.largest(console()));
        if (json) {
            CountJson.write(report, out());
        } else {
            CountText.write(report, out());
        }
        return 0;
    }
}
