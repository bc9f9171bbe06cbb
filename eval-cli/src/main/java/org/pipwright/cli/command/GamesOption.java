package org.pipwright.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.cubeplay.CubefulPlay;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.ranking.RankedPlay;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rollout.CubefulLine;
import org.pipwright.engine.rollout.CubefulRolloutReport;
import org.pipwright.engine.rollout.CubefulRollouts;
import org.pipwright.engine.rollout.CubefulStart;
import org.pipwright.engine.rollout.Estimate;
import org.pipwright.engine.rollout.RolloutLine;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import picocli.CommandLine.Option;

/** Playing positions out as a part of ranking or odds. */
final class GamesOption {
    @Option(
            names = "--rollout",
            paramLabel = "N",
            description =
                    "Play N games from what is asked about (of the plays: from the best few), with luck taken off,"
                            + " as pipwright rollout does, which offers more.")
    private Integer games;

    boolean given() {
        return games != null;
    }

    private RolloutSettings settings() {
        try {
            return RolloutSettings.DEFAULT.withTrials(games);
        } catch (IllegalArgumentException e) {
            throw new UserError("--rollout: " + e.getMessage());
        }
    }

    private Rollouts open(Model model, int threads, EndgameTables tables) {
        return new Rollouts(Judges.of(model, tables), settings(), threads);
    }

    RolloutReport odds(Position position, Model model, int threads, EndgameTables tables) {
        try (Rollouts rollouts = open(model, threads, tables)) {
            return rollouts.odds(position, RolloutListener.NONE);
        }
    }

    /** A ranking in which the given plays have been played out. */
    List<RankedPlay> playOut(
            List<RankedPlay> ranking,
            List<Play> plays,
            Position from,
            Roll roll,
            Model model,
            int threads,
            EndgameTables tables) {
        RolloutReport report;
        try (Rollouts rollouts = open(model, threads, tables)) {
            report = rollouts.compare(from, roll, plays, RolloutListener.NONE);
        }
        Map<Play, RolloutLine> played = report.lines().stream()
                .collect(Collectors.toMap(line -> plays.get(line.candidate()), Function.identity()));
        List<RankedPlay.Evaluated> mixed = new ArrayList<>();
        for (RankedPlay line : ranking) {
            RolloutLine out = played.get(line.play());
            mixed.add(
                    out == null
                            ? new RankedPlay.Evaluated(line.play(), line.outcomes(), line.equity(), line.depth())
                            : new RankedPlay.Evaluated(
                                    line.play(), out.outcomes(), out.equity().mean(), depth(report, out)));
        }
        return RankedPlay.inOrder(mixed);
    }

    /** The same with the cube. The chances stay those of the ranking: games tell the value. */
    List<CubefulPlay> playOut(List<CubefulPlay> ranking, List<Play> plays, CubeJudges judges) {
        List<CubefulStart> starts = plays.stream()
                .map(play -> CubefulStart.after(play, judges.cube()))
                .collect(Collectors.toList());
        CubefulRolloutReport report;
        try (CubefulRollouts rollouts = judges.rollouts(settings())) {
            report = rollouts.compare(starts, judges.stakes(), judges.cube().value(), RolloutListener.NONE);
        }
        Map<Play, Estimate> played = report.lines().stream()
                .collect(Collectors.toMap(line -> plays.get(line.candidate()), CubefulLine::value));
        List<CubefulPlay> mixed = new ArrayList<>(ranking);
        mixed.replaceAll(line -> {
            Estimate value = played.get(line.play());
            return value == null
                    ? line
                    : line.playedOut(value.mean(), new Depth(0, report.trials(), value.standardError()));
        });
        return CubefulPlay.inOrder(mixed, judges.terms().get().point(judges.cube()));
    }

    static Depth depth(RolloutReport report, RolloutLine line) {
        return new Depth(0, report.trials(), line.equity().standardError());
    }
}
