package org.pipwright.cli.command;

import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.report.CubeJson;
import org.pipwright.cli.report.CubeReport;
import org.pipwright.cli.report.CubeText;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.search.LookaheadSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Position and cube to the right cube actions of both sides. */
@Command(
        name = "cube",
        customSynopsis = "pipwright cube POSITION [options]",
        header = "Say whether to double, and whether to take or pass.",
        description = {
            "For the side on roll, before its roll: what it gets without doubling, with a double that is taken and with one"
                    + " that is passed; the right action of both sides and what each wrong one costs; the chance needed to"
                    + " take and the chances at which to double, at this position's share of gammons; and how often the next"
                    + " two rolls lose the market.",
            "Money play with the Jacoby rule unless --away says otherwise; its equities are points per unit of the present"
                    + " cube. In a match they are chances to win it."
        },
        footer = {
            "Examples:",
            "  pipwright cube 5@6 3@8 3@7 2@24 2@3 / 4@6 3@8 5@13 2@24 1@bar",
            "  pipwright cube 1@5 1@2 / 1@6 --cube 2 --owner me",
            "  pipwright cube 2@8 3@6 4@5 3@4 3@3 / 3@9 4@6 4@5 2@4 2@3 --explain",
            "  pipwright cube start --away 2,4 --json"
        })
public final class CubeCommand extends CliCommand {
    @Mixin
    private PositionArgument position;

    @Mixin
    private CubeOptions options;

    @Option(
            names = "--lookahead",
            paramLabel = "N",
            defaultValue = "1",
            description = "Future rolls to average over, 0 to " + LookaheadSettings.MAX
                    + ". Default: 1. Races beyond the tables are played out many times instead.")
    private int lookahead;

    @Mixin
    private RacesOption races;

    @Mixin
    private TablesOption tables;

    @Mixin
    private NetOption net;

    @Option(
            names = "--explain",
            description = "Say why, in sentences that can be read to a class: first the one that decides.")
    private boolean explain;

    @Option(names = "--json", description = "Print JSON, in the form that cube.schema.json describes.")
    private boolean json;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public CubeCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        if (lookahead < 0 || lookahead > LookaheadSettings.MAX) {
            throw new UserError("--lookahead is " + lookahead + ": use 0 to " + LookaheadSettings.MAX);
        }
        CubeState cube = options.cube();
        Stakes stakes = options.stakes();
        Position read = position.read(console());
        if (read.finished()) {
            throw new UserError("the game is over in this position: there is nothing to double");
        }
        CubeReport report = report(Question.before(read).with(stakes, cube));
        if (json) {
            CubeJson.write(report, out());
        } else {
            CubeText.write(report, out());
        }
        return 0;
    }

    private CubeReport report(Question question) {
        int threads = Runtime.getRuntime().availableProcessors();
        Model model = net.load();
        Knowledge knowledge = options.knowledge(Knowledge.of(model).with(tables.standard(threads, console())));
        Effort effort = races.on(Effort.lookahead(lookahead));
        try (Judge judge = new Judge(knowledge, threads)) {
            Verdict verdict = judge.ask(question, effort);
            CubeReport report = CubeReport.of(verdict, judge.outlook(verdict, effort), NetLabel.of(net.name(), model));
            return explain ? report.explained(knowledge.terms(question.stakes())) : report;
        }
    }
}
