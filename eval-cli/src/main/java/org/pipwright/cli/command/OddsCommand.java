package org.pipwright.cli.command;

import java.util.List;
import org.pipwright.cli.batch.Lines;
import org.pipwright.cli.command.FormatOption.Format;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.cli.report.OddsReport;
import org.pipwright.cli.report.OddsRows;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.position.Position;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Position to the chances before the roll. */
@Command(
        name = "odds",
        customSynopsis = {"pipwright odds POSITION [options]", "       pipwright odds --batch FILE [options]"},
        header = "Give the chances of a position before the roll.",
        description = {
            "For the side on roll: the chances, in per cent, to win and to lose a single game, a gammon and a backgammon,"
                    + " and the equity they come to in points per game, with the cube left out. They are exact (the last"
                    + " six checkers of both sides), from distributions (both sides home, or of few checkers), estimated"
                    + " by simulation (other races) or estimated by the net."
        },
        footer = {
            "Examples:",
            "  pipwright odds start",
            "  pipwright odds 5@1 4@2 6@3 / 2@3 1@6 --json",
            "  pipwright odds --batch positions.txt > chances.jsonl",
            "  pipwright odds --batch positions.txt --format csv > chances.csv"
        })
public final class OddsCommand extends CliCommand {
    /** Positions that a thread takes at a time without lookahead, as a rule a few microseconds each. */
    private static final int PIECE = 64;

    @Mixin
    private PositionsArgument position;

    @Mixin
    private SearchOptions search;

    @Mixin
    private GamesOption games;

    @Mixin
    private NetOption net;

    @Mixin
    private FormatOption format;

    private Model model;

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
        search.refuseCluster();
        if (games.given()) {
            search.refuse("--rollout asks the games instead: give one of them");
        }
        Position read = position.read(console());
        Verdict verdict = verdict(read);
        switch (format.or(Format.TABLE)) {
            case JSON:
                report(verdict).writeJson(out());
                break;
            case CSV:
                OddsRows rows = OddsRows.csv();
                out().print(rows.head() + rows.of(verdict, 0));
                break;
            default:
                report(verdict).writeText(out());
        }
        return 0;
    }

    private int batch() {
        PositionsArgument.refuse(games.given(), "--rollout");
        PositionsArgument.refuse(search.time().isPresent(), "--seconds");
        model = net.load();
        Lines lines = new OddsLines(NetLabel.of(net.name(), model), format.or(Format.JSON));
        return search.batch(position, false, lines, search.knowledge(model, console()), PIECE, console());
    }

    private Verdict verdict(Position from) {
        model = net.load();
        try (Judge judge = search.judge(search.knowledge(model, console()))) {
            Verdict verdict = judge.ask(Question.before(from), games.on(search.effort()));
            if (!games.given() && verdict.basis() != Basis.SIMULATED && !from.finished()) {
                search.tell(judge, console());
            }
            return verdict;
        }
    }

    private OddsReport report(Verdict verdict) {
        return OddsReport.of(verdict, NetLabel.of(net.name(), model));
    }
}
