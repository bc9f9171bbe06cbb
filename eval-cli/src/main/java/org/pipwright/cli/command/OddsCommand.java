package org.pipwright.cli.command;

import org.pipwright.cli.console.Console;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.cli.report.OddsReport;
import org.pipwright.engine.evaluation.NetworkEvaluator;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Depth;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Position to the chances before the roll. */
@Command(
        name = "odds",
        customSynopsis = "pipwright odds POSITION [options]",
        header = "Give the chances of a position before the roll.",
        description = {
            "For the side on roll: the chances, in per cent, to win and to lose a single game, a gammon and a backgammon,"
                    + " and the equity they come to in points per game, with the cube left out."
        },
        footer = {"Examples:", "  pipwright odds start", "  pipwright odds 5@1 4@2 6@3 / 2@3 1@6 --json"})
public final class OddsCommand extends CliCommand {
    @Mixin
    private PositionArgument position;

    @Mixin
    private NetOption net;

    @Option(names = "--json", description = "Print JSON, in the form that odds.schema.json describes.")
    private boolean json;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public OddsCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        Position read = position.read(console().in());
        Model model = net.load();
        OddsReport report = new OddsReport(
                read, NetLabel.of(net.name(), model), new NetworkEvaluator(model).evaluate(read), Depth.STATIC);
        if (json) {
            report.writeJson(out());
        } else {
            report.writeText(out());
        }
        return 0;
    }
}
