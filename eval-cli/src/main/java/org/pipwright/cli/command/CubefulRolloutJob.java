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
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Question;
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
    private final Knowledge knowledge;
    private final NetLabel net;
    private final RolloutSettings settings;
    private final RolloutFile file;
    private final CubefulRollouts rollouts;
    private final RolloutProgress<CubefulRolloutReport> progress;

    /** Names of the candidates. */
    private List<String> names = List.of();

    /** A rollout of what is asked about: position, cube and stakes. */
    CubefulRolloutJob(
            Question asked,
            Knowledge knowledge,
            NetLabel net,
            RolloutSettings settings,
            int threads,
            RolloutFile file,
            PrintWriter err) {
        this.from = asked.position();
        this.cube = asked.cube();
        this.stakes = asked.stakes();
        this.knowledge = knowledge;
        this.net = net;
        this.settings = settings;
        this.file = file;
        this.progress = new RolloutProgress<>(err, this::standings);
        rollouts = rollouts(knowledge, settings, threads);
    }

    private static CubefulRollouts rollouts(Knowledge knowledge, RolloutSettings settings, int threads) {
        try {
            return new CubefulRollouts(() -> knowledge.judgement().evaluator(), knowledge::terms, settings, threads);
        } catch (IllegalArgumentException e) {
            throw new UserError(e.getMessage());
        }
    }

    void stop() {
        progress.stop();
    }

    /** Compares plays. */
    CubefulRolloutSummary plays(Roll roll, List<Play> plays) {
        List<CubefulStart> starts =
                plays.stream().map(play -> CubefulStart.after(play, cube)).collect(Collectors.toList());
        names = plays.stream().map(Play::toString).collect(Collectors.toList());
        CubefulRolloutReport report = run(running -> running.compare(starts, stakes, cube.value(), file, progress));
        int legal = Plays.legal(from, roll).size();
        return new CubefulRolloutSummary(from, roll, cube, stakes, net, settings, legal, plays, List.of(), report);
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
