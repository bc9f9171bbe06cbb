package org.pipwright.cli.command;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.report.CubefulRolloutSummary;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.cubeplay.CubefulRanker;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rollout.CubefulRolloutReport;
import org.pipwright.engine.rollout.CubefulRollouts;
import org.pipwright.engine.rollout.CubefulStart;
import org.pipwright.engine.rollout.RolloutFile;
import org.pipwright.engine.rollout.RolloutSettings;

/** A rollout with the cube, from what was asked for to its summary. */
final class CubefulRolloutJob {
    private final Position from;
    private final CubeState cube;
    private final Stakes stakes;
    private final CubeJudges judges;
    private final NetLabel net;
    private final RolloutSettings settings;
    private final RolloutFile file;
    private final CubefulRollouts rollouts;
    private final RolloutProgress<CubefulRolloutReport> progress;

    /** Names of the candidates. */
    private List<String> names = List.of();

    CubefulRolloutJob(
            Position from,
            CubeJudges judges,
            NetLabel net,
            RolloutSettings settings,
            RolloutFile file,
            PrintWriter err) {
        this.from = from;
        this.cube = judges.cube();
        this.stakes = judges.stakes();
        this.judges = judges;
        this.net = net;
        this.settings = settings;
        this.file = file;
        this.progress = new RolloutProgress<>(err, this::standings);
        rollouts = judges.rollouts(settings);
    }

    void stop() {
        progress.stop();
    }

    /** Compares plays; the best few of a ranking if none are named. */
    CubefulRolloutSummary plays(Roll roll, List<Play> named, int most) {
        List<Play> plays = named.isEmpty() ? best(roll, most) : named;
        List<CubefulStart> starts =
                plays.stream().map(play -> CubefulStart.after(play, cube)).collect(Collectors.toList());
        names = plays.stream().map(Play::toString).collect(Collectors.toList());
        CubefulRolloutReport report = run(running -> running.compare(starts, stakes, cube.value(), file, progress));
        int legal = Plays.legal(from, roll).size();
        return new CubefulRolloutSummary(from, roll, cube, stakes, net, settings, legal, plays, List.of(), report);
    }

    private List<Play> best(Roll roll, int most) {
        try (CubefulRanker ranker = judges.ranker()) {
            return Candidates.ofCubeful(ranker.rank(from, roll, cube, 0), most);
        }
    }

    /** Compares the cube actions before the roll. */
    CubefulRolloutSummary actions() {
        List<String> actions = new ArrayList<>(List.of("no double"));
        if (stakes.mayDouble(cube)) {
            actions.add("double, take");
        }
        if (stakes.mayDouble(cube) && stakes.mayBeaver(cube)) {
            actions.add("double, beaver");
        }
        names = actions;
        CubefulRolloutReport report = run(running -> running.actions(from, cube, stakes, file, progress));
        return new CubefulRolloutSummary(from, null, cube, stakes, net, settings, 0, List.of(), actions, report);
    }

    private CubefulRolloutReport run(Function<CubefulRollouts, CubefulRolloutReport> playing) {
        try (CubefulRollouts running = rollouts) {
            return playing.apply(running);
        } catch (CancellationException e) {
            throw new UserError(e.getMessage() + ": nothing is known yet");
        }
    }

    private String standings(CubefulRolloutReport report) {
        return RolloutProgress.line(
                report.trials(),
                settings.trials(),
                report.lines().stream()
                        .map(line -> RolloutProgress.standing(names.get(line.candidate()), line.value())));
    }
}
