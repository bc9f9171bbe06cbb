package org.pipwright.cli.command;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.pipwright.cli.batch.Batch;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.report.CubefulRankJson;
import org.pipwright.cli.report.CubefulRankReport;
import org.pipwright.cli.report.CubefulRankText;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.cli.report.RankJson;
import org.pipwright.cli.report.RankReport;
import org.pipwright.cli.report.RankText;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.explain.Explanation;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Listing;
import org.pipwright.engine.ranking.RankedPlay;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.PlaySearch;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Position and roll to ranked plays. */
@Command(
        name = "rank",
        customSynopsis = {
            "pipwright rank POSITION --roll ROLL [options]",
            "pipwright rank --batch FILE [--roll ROLL] [options]"
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
            "  pipwright rank start --roll 3-1",
            "  pipwright rank start --roll 3-1 --lookahead 2",
            "  pipwright rank start --roll 6-2 --top 3 --explain",
            "  pipwright rank 2@6 1@bar / 3@4 2@20 of 5 --roll 6-2 --top 3",
            "  pipwright rank start --roll 6-4 --away 2,1 --crawford",
            "  pipwright rank start --roll 31 --plays \"8/5 6/5; 24/23 13/10\" --json",
            "  pipwright rank --batch rolls.txt --top 1 | head"
        })
public final class RankCommand extends CliCommand {
    private static final int RIVALS = 3;

    /** Positions that a thread takes at a time where the net alone is asked. */
    private static final int PIECE = 16;

    @Spec
    private CommandSpec spec;

    @Mixin
    private PositionsArgument position;

    @Option(
            names = "--roll",
            paramLabel = "ROLL",
            converter = RollConverter.class,
            description = "The two dice, as in 3-1 or 31.")
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

    @Option(names = "--json", description = "Print JSON, in the form that rank.schema.json describes.")
    private boolean json;

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
        if (!position.many()) {
            position.requireOne(roll == null ? List.of(spec.findOption("--roll")) : List.of());
        }
        if (top != null && top < 1) {
            throw new UserError("--top is " + top + ": ask for at least 1 play");
        }
        if (position.many()) {
            return batch();
        }
        Position read = position.read(console().in());
        if (read.finished()) {
            throw new UserError("the game is over in this position: there is no roll to play");
        }
        if (plays.given() && search.time().isPresent()) {
            throw new UserError("--seconds weighs all plays and drops the weak ones: give --lookahead with --plays");
        }
        if (cube.given()) {
            printCubeful(read);
            return 0;
        }
        RankReport report = report(read, plays.read(read, roll));
        if (json) {
            RankJson.write(report, out());
        } else {
            RankText.write(report, out());
        }
        return 0;
    }

    private int batch() {
        PositionsArgument.refuse(games.given(), "--rollout");
        PositionsArgument.refuse(search.time().isPresent(), "--seconds");
        PositionsArgument.refuse(plays.given(), "--plays");
        PositionsArgument.refuse(explain, "--explain");
        if (cube.given() && position.simulate()) {
            throw new UserError("--simulate leaves the cube out: give it without cube and score");
        }
        Model model = net.load();
        NetLabel label = NetLabel.of(net.name(), model);
        EndgameTables tables = search.tables(console());
        int lookahead = search.lookahead();
        Supplier<CubeJudges> judges = () -> cube.judges(model, tables, 1);
        if (cube.given()) {
            // Once before the first line, so that what is wrong with the options is said once.
            new CubefulRankJob(judges.get(), label, search).close();
        }
        Batch lines = new Batch(true, lookahead == 0 && !position.simulate() ? PIECE : 1);
        return position.answer(
                lines,
                console(),
                search.threads(),
                search.stats(),
                () -> cube.given()
                        ? new CubefulRankLines(new CubefulRankJob(judges.get(), label, search), roll, most())
                        : new RankLines(model, label, tables, lookahead, position.simulate(), roll, most()));
    }

    private void printCubeful(Position from) {
        if (search.stats()) {
            throw new UserError("--stats tells of a search without the cube: leave it out with cube or score");
        }
        Model model = net.load();
        CubeJudges judges = cube.judges(model, search.tables(console()), search.threads());
        Optional<GamesOption> played = games.given() ? Optional.of(games) : Optional.empty();
        try (CubefulRankJob job = new CubefulRankJob(judges, NetLabel.of(net.name(), model), search)) {
            CubefulRankReport report = job.report(
                    from, roll, plays.read(from, roll), most(), played, shown -> cubeless(from, shown, model));
            if (json) {
                CubefulRankJson.write(report, out());
            } else {
                CubefulRankText.write(report, out());
            }
        }
    }

    /** Facts leave the cube out, those about the opponent's rolls too. */
    private Optional<Explanation> cubeless(Position from, List<RankedPlay> shown, Model model) {
        if (!explain) {
            return Optional.empty();
        }
        try (PlaySearch searching = search.open(model, console())) {
            return explanation(from, shown, searching);
        }
    }

    private int most() {
        return top == null ? Integer.MAX_VALUE : top;
    }

    private RankReport report(Position from, List<Play> candidates) {
        Model model = net.load();
        try (PlaySearch searching = search.open(model, console())) {
            List<RankedPlay> ranking = RaceSimulation.refined(
                    ranking(from, candidates, searching), search.tables(console()), search.threads());
            search.tell(searching, console());
            if (games.given()) {
                List<Play> some = plays.given() ? candidates : Candidates.of(ranking, Candidates.MOST);
                ranking = games.playOut(ranking, some, from, roll, model, search.threads(), search.tables(console()));
            }
            int legal = plays.given() ? Plays.legal(from, roll).size() : ranking.size();
            List<RankedPlay> shown = Listing.byValue(ranking, most(), RankedPlay::equity);
            NetLabel label = NetLabel.of(net.name(), model);
            return new RankReport(
                    from, roll, label, legal, ranking.size(), shown, true, explanation(from, shown, searching));
        }
    }

    private List<RankedPlay> ranking(Position from, List<Play> candidates, PlaySearch searching) {
        if (plays.given()) {
            return searching.rank(from, roll, candidates, search.lookahead());
        }
        return search.time().isPresent()
                ? searching.rank(from, roll, search.time().get())
                : searching.rank(from, roll, search.lookahead());
    }

    /** The opponent's replies are looked at as deeply as they were for the ranking. */
    private Optional<Explanation> explanation(Position from, List<RankedPlay> shown, PlaySearch searching) {
        if (!explain) {
            return Optional.empty();
        }
        int lookahead = Math.max(0, shown.get(0).depth().lookahead() - 1);
        List<RankedPlay> some = shown.subList(0, Math.min(1 + RIVALS, shown.size()));
        return Optional.of(Explanation.of(from, some, searching, lookahead));
    }
}
