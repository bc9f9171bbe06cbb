package org.pipwright.cli.command;

import java.util.List;
import org.pipwright.cli.batch.Batch;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.report.Bases;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.cli.report.OddsReport;
import org.pipwright.engine.bearoff.Basis;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.evaluation.NetworkEvaluator;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.rollout.RolloutLine;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.search.PlaySearch;
import org.pipwright.engine.search.Searched;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Position to the chances before the roll. */
@Command(
        name = "odds",
        customSynopsis = {"pipwright odds POSITION [options]", "pipwright odds --batch FILE [options]"},
        header = "Give the chances of a position before the roll.",
        description = {
            "For the side on roll: the chances, in per cent, to win and to lose a single game, a gammon and a backgammon,"
                    + " and the equity they come to in points per game, with the cube left out. They are exact (the last"
                    + " six checkers of both sides), from distributions (both sides home), estimated by simulation (races"
                    + " before that) or estimated by the net."
        },
        footer = {
            "Examples:",
            "  pipwright odds start",
            "  pipwright odds 5@1 4@2 6@3 / 2@3 1@6 --json",
            "  pipwright odds --batch positions.txt > chances.jsonl"
        })
public final class OddsCommand extends CliCommand {
    /** Positions that a thread takes at a time where the net alone is asked, a few microseconds each. */
    private static final int PIECE = 64;

    @Mixin
    private PositionsArgument position;

    @Mixin
    private SearchOptions search;

    @Mixin
    private GamesOption games;

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
        if (position.many()) {
            return batch();
        }
        position.requireOne(List.of());
        if (games.given()) {
            search.refuse("--rollout asks the games instead: give one of them");
        }
        Position read = position.read(console().in());
        Model model = net.load();
        OddsReport report = report(read, model, NetLabel.of(net.name(), model));
        if (json) {
            report.writeJson(out());
        } else {
            report.writeText(out());
        }
        return 0;
    }

    private int batch() {
        PositionsArgument.refuse(games.given(), "--rollout");
        PositionsArgument.refuse(search.time().isPresent(), "--seconds");
        Model model = net.load();
        NetLabel label = NetLabel.of(net.name(), model);
        EndgameTables tables = search.tables(console());
        int lookahead = search.lookahead();
        Batch lines = new Batch(false, lookahead == 0 && !position.simulate() ? PIECE : 1);
        return position.answer(
                lines,
                console(),
                search.threads(),
                search.stats(),
                () -> new OddsLines(model, label, tables, lookahead, position.simulate()));
    }

    private OddsReport report(Position from, Model model, NetLabel label) {
        if (from.finished()) {
            return new OddsReport(from, label, new NetworkEvaluator(model).evaluate(from), Depth.STATIC, true);
        }
        if (games.given()) {
            RolloutReport rollout = games.odds(from, model, search.threads(), search.tables(console()));
            RolloutLine line = rollout.lines().get(0);
            Depth depth = GamesOption.depth(rollout, line);
            return new OddsReport(from, label, line.outcomes(), line.equity().mean(), depth, Basis.ESTIMATED);
        }
        if (Bases.beyondTables(from)) {
            Outcomes simulated = RaceSimulation.odds(from, search.tables(console()));
            return new OddsReport(from, label, simulated, Depth.STATIC, true);
        }
        try (PlaySearch searching = search.open(model, console())) {
            Searched found = search.time().isPresent()
                    ? searching.odds(from, search.time().get())
                    : new Searched(0, searching.odds(from, search.lookahead()), search.lookahead());
            search.tell(searching, console());
            return new OddsReport(from, label, found.outcomes(), new Depth(found.lookahead()), true);
        }
    }
}
