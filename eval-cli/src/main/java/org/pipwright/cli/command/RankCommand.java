package org.pipwright.cli.command;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.cli.batch.Lines;
import org.pipwright.cli.command.FormatOption.Format;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.cli.report.RankJson;
import org.pipwright.cli.report.RankReport;
import org.pipwright.cli.report.RankRows;
import org.pipwright.cli.report.RankText;
import org.pipwright.engine.explain.Explanation;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Position and roll to ranked plays. */
@Command(
        name = "rank",
        customSynopsis = {
            "pipwright rank POSITION ROLL [options]",
            "       pipwright rank POSITION --roll all [options]",
            "       pipwright rank --batch FILE [--roll ROLL] [options]"
        },
        header = "Rank the plays for a roll, best first.",
        description = {
            "For each play: its equity in points per game for the side that plays, with the cube left out; what it costs"
                    + " against the best; a word for that cost (fine: less than 0.010, thin: less than 0.040, costly: less"
                    + " than 0.100, heavy: more); and the chances, in per cent, to win and to lose a single game, a gammon"
                    + " and a backgammon. What they rest on is said as pipwright help odds explains it.",
            "With a cube or a score (--cube 1 for money play with the cube in the centre, --away 3,5 for a match) plays are"
                    + " ranked by what they leave with the cube: points per unit of the cube, or the chance to win the match;"
                    + " the cubeless equity stands beside it. Costs of match chances are graded in points: divided by half of"
                    + " what a single game decides. The games of --rollout are played with the cube, and"
                    + " what --explain says leaves it out."
        },
        footer = {
            "Examples:",
            "  pipwright rank start 3-1",
            "  pipwright rank start --roll 3-1 --lookahead 2",
            "  pipwright rank start --roll 6-2 --top 3 --explain",
            "  pipwright rank 2@6 1@bar / 3@4 2@20 of 5 --roll 6-2 --top 3",
            "  pipwright rank start --roll 6-4 --away 2,1 --crawford",
            "  pipwright rank start 6-2 --play-on \"3-1: 8/5 6/5\"",
            "  pipwright rank start --roll all --play-on \"3-1: 8/5 6/5\" --sheet replies.html",
            "  pipwright rank start --roll 31 --plays \"8/5 6/5; 24/23 13/10\" --json",
            "  pipwright rank --batch rolls.txt --top 1 | head",
            "  pipwright rank --batch rolls.txt --top 1 --format csv > plays.csv"
        })
public final class RankCommand extends CliCommand {
    private static final int RIVALS = 3;

    /** Positions that a thread takes at a time without lookahead. */
    private static final int PIECE = 16;

    @Spec
    private CommandSpec spec;

    @Mixin
    private PositionsArgument position;

    @Option(
            names = "--roll",
            paramLabel = "ROLL",
            converter = RollChoice.Converter.class,
            description =
                    "The two dice, as in 3-1 or 31; they may also follow the position. Or all: the best play of each of"
                            + " the 21 rolls in a table, with the next best and what it costs.")
    private RollChoice choice;

    private Roll roll;

    @Mixin
    private PlaysOption plays;

    @Option(names = "--top", paramLabel = "N", description = "Show only the N best.")
    private Integer top;

    @Option(
            names = "--explain",
            description = "Explain the best play by what it does, and up to " + RIVALS
                    + " rivals of those shown by what they lack and what speaks for them.")
    private boolean explain;

    @Mixin
    private CubeOptions cube;

    @Mixin
    private SearchOptions search;

    @Mixin
    private GamesOption games;

    @Mixin
    private NetOption net;

    @Mixin
    private FormatOption format;

    @Mixin
    private AllRolls rolls;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public RankCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        boolean all = choice != null && choice.all();
        roll = choice == null ? null : choice.one();
        if (all) {
            return sheet();
        }
        if (rolls.sheetWanted()) {
            throw new UserError("--sheet is for the 21 rolls of a position: give --roll all, or leave it out");
        }
        if (!position.many()) {
            roll = position.roll(roll);
            position.requireOne(roll == null ? List.of(spec.findOption("--roll")) : List.of());
        }
        if (top != null && top < 1) {
            throw new UserError("--top is " + top + ": ask for at least 1 play");
        }
        if (position.many()) {
            return batch();
        }
        search.refuseCluster();
        if (explain && format.or(Format.TABLE) == Format.CSV) {
            throw new UserError("--explain gives sentences, which no row of CSV holds: take --format table or json");
        }
        Position read = unfinished();
        if (plays.given() && search.time().isPresent()) {
            throw new UserError("--seconds weighs all plays and drops the weak ones: give --lookahead with --plays");
        }
        RankReport report = report(cube.about(Question.of(read, roll)), plays.read(read, roll));
        write(report);
        return 0;
    }

    private void write(RankReport report) {
        switch (format.or(Format.TABLE)) {
            case JSON:
                RankJson.write(report, out());
                break;
            case CSV:
                RankRows rows = RankRows.csv(most());
                out().print(rows.head() + rows.of(report.verdict().question(), report.shown(), 0));
                break;
            default:
                RankText.write(report, out());
        }
    }

    /** The best play of each roll. */
    private int sheet() {
        if (position.many()) {
            throw new UserError("--roll all is for one position: with --batch put the rolls after the positions");
        }
        AllRolls.refuse(explain, "--explain");
        AllRolls.refuse(plays.given(), "--plays");
        AllRolls.refuse(top != null, "--top");
        AllRolls.refuse(games.given(), "--rollout");
        AllRolls.refuse(search.time().isPresent(), "--seconds");
        search.refuseCluster();
        if (position.roll(null) != null) {
            throw new UserError("a roll follows the position, but --roll asks for all: leave one of them out");
        }
        position.requireOne(List.of());
        Position read = unfinished();
        Model model = net.load();
        Knowledge knowledge = cube.knowledge(search.knowledge(model, console()));
        try (Judge judge = search.judge(knowledge)) {
            List<Verdict> verdicts = AllRolls.ask(read, judge, cube, search.effort());
            search.tell(judge, console());
            rolls.write(
                    verdicts,
                    NetLabel.of(net.name(), model),
                    position.before(),
                    format.or(Format.TABLE),
                    out(),
                    console().err());
        }
        return 0;
    }

    private Position unfinished() {
        Position read = position.read(console());
        if (read.finished()) {
            throw new UserError("the game is over in this position: there is no roll to play");
        }
        return read;
    }

    private int batch() {
        PositionsArgument.refuse(games.given(), "--rollout");
        PositionsArgument.refuse(search.time().isPresent(), "--seconds");
        PositionsArgument.refuse(plays.given(), "--plays");
        PositionsArgument.refuse(explain, "--explain");
        Model model = net.load();
        NetLabel label = NetLabel.of(net.name(), model);
        // Before the first line, so that what is wrong with the options is said once.
        Knowledge knowledge = cube.knowledge(search.knowledge(model, console()));
        Lines lines = new RankLines(label, cube::about, roll, most(), format.or(Format.JSON));
        return search.batch(position, true, lines, knowledge, PIECE, console());
    }

    private int most() {
        return top == null ? Integer.MAX_VALUE : top;
    }

    private RankReport report(Question question, List<Play> named) {
        Model model = net.load();
        Knowledge knowledge = cube.knowledge(search.knowledge(model, console()));
        try (Judge judge = search.judge(knowledge)) {
            Verdict verdict = judge.ask(
                    named.isEmpty() ? question : question.only(withBest(question, named, judge)),
                    games.on(search.effort()));
            search.tell(judge, console());
            RankReport report = RankReport.of(verdict, named, NetLabel.of(net.name(), model), most());
            return explain ? report.with(explanation(question, report.explained(), judge, knowledge)) : report;
        }
    }

    /** The plays that were named and the best of all: what a play costs is measured against that one. */
    private List<Play> withBest(Question question, List<Play> named, Judge judge) {
        List<Play> plays = new ArrayList<>(named);
        Play best = judge.ask(question, search.effort()).best().play();
        if (plays.stream().noneMatch(play -> play.result().equals(best.result()))) {
            plays.add(best);
        }
        return plays;
    }

    /** The opponent's replies are looked at without lookahead, which tells rolls apart at once, with the cube left out. */
    private static Explanation explanation(
            Question question, List<PlayVerdict> shown, Judge judge, Knowledge knowledge) {
        List<PlayVerdict> explained = shown.subList(0, Math.min(1 + RIVALS, shown.size()));
        return Explanation.of(question.position(), explained, judge, 0).under(question, knowledge.terms());
    }
}
