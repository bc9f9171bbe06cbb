package org.pipwright.cli.command;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.cli.report.RankJson;
import org.pipwright.cli.report.RankReport;
import org.pipwright.cli.report.RankText;
import org.pipwright.engine.evaluation.NetworkEvaluator;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.ranking.PlayRanker;
import org.pipwright.engine.ranking.RankedPlay;
import org.pipwright.engine.roll.Roll;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Position and roll to ranked plays. */
@Command(
        name = "rank",
        customSynopsis = "pipwright rank POSITION --roll ROLL [options]",
        header = "Rank the plays for a roll, best first.",
        description = {
            "For each play: its equity in points per game for the side that plays, with the cube left out; what it costs"
                    + " against the best; a word for that cost (fine: less than 0.010, thin: less than 0.040, costly: less"
                    + " than 0.100, heavy: more); and the chances, in per cent, to win and to lose a single game, a gammon"
                    + " and a backgammon."
        },
        footer = {
            "Examples:",
            "  pipwright rank start --roll 3-1",
            "  pipwright rank 2@6 1@bar / 3@4 2@20 of 5 --roll 6-2 --top 3",
            "  pipwright rank start --roll 31 --plays \"8/5 6/5; 24/23 13/10\" --json"
        })
public final class RankCommand extends CliCommand {
    @Mixin
    private PositionArgument position;

    @Option(
            names = "--roll",
            required = true,
            paramLabel = "ROLL",
            converter = RollConverter.class,
            description = "The two dice, as in 3-1 or 31.")
    private Roll roll;

    @Option(
            names = "--plays",
            paramLabel = "PLAYS",
            description = "Rank only these plays, among themselves: separate them by semicolons, or repeat the option.")
    private List<String> plays = new ArrayList<>();

    @Option(names = "--top", paramLabel = "N", description = "Show only the N best.")
    private Integer top;

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
        if (top != null && top < 1) {
            throw new UserError("--top is " + top + ": ask for at least 1 play");
        }
        Position read = position.read(console().in());
        if (read.finished()) {
            throw new UserError("the game is over in this position: there is no roll to play");
        }
        RankReport report = report(read, candidates(read));
        if (json) {
            RankJson.write(report, out());
        } else {
            RankText.write(report, out());
        }
        return 0;
    }

    /** The plays asked for; none if all are to be ranked. */
    private List<Play> candidates(Position from) {
        List<Play> candidates = plays.stream()
                .flatMap(text -> Arrays.stream(text.split(";")))
                .filter(text -> !text.isBlank())
                .map(text -> PlayText.parse(text, from, roll))
                .collect(Collectors.toList());
        if (candidates.isEmpty() && !plays.isEmpty()) {
            throw new UserError("--plays names no play: write them like \"8/5 6/5; 24/23 13/10\"");
        }
        return candidates;
    }

    private RankReport report(Position from, List<Play> candidates) {
        Model model = net.load();
        PlayRanker ranker = new PlayRanker(new NetworkEvaluator(model), Depth.STATIC);
        boolean all = candidates.isEmpty();
        List<RankedPlay> ranking = all ? ranker.rank(from, roll) : ranker.rank(from, roll, candidates);
        int legal = all ? ranking.size() : Plays.legal(from, roll).size();
        int shown = top == null ? ranking.size() : Math.min(top, ranking.size());
        return new RankReport(
                from, roll, NetLabel.of(net.name(), model), legal, ranking.size(), ranking.subList(0, shown));
    }
}
