package org.pipwright.cli.command;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.cli.report.RolloutSummary;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;

/** A rollout, from what was asked for to its summary. */
final class RolloutJob {
    private final Question asked;
    private final List<Play> plays;
    private final List<String> names;
    private final NetLabel net;
    private final RolloutSettings settings;
    private final WorkFile file;
    private final Rollouts rollouts;
    private final RolloutProgress progress;

    /**
     * A rollout of plays where a roll was asked about, else of what comes before one: the chances, or the cube actions;
     * {@code rollouts} is closed at its end.
     */
    RolloutJob(
            Question asked,
            List<Play> plays,
            Rollouts rollouts,
            NetLabel net,
            RolloutSettings settings,
            WorkFile file,
            PrintWriter err) {
        this.asked = asked;
        this.plays = plays;
        this.net = net;
        this.settings = settings;
        this.file = file;
        names = names();
        this.rollouts = rollouts;
        progress = new RolloutProgress(err, this::standings);
    }

    private List<String> names() {
        if (asked.roll() != null) {
            return plays.stream().map(Play::toString).collect(Collectors.toList());
        }
        if (!asked.cubeful()) {
            return List.of("before the roll");
        }
        Stakes stakes = asked.stakes();
        CubeState cube = asked.cube();
        List<String> actions = new ArrayList<>(List.of("no double", "double, take", "double, beaver"));
        return actions.subList(0, stakes.cubesToRollWith(cube).size());
    }

    void stop() {
        progress.stop();
    }

    /** Plays until there is enough, or it is stopped. */
    RolloutSummary run() {
        int legal = asked.roll() == null
                ? 0
                : Plays.legal(asked.position(), asked.roll()).size();
        try (Rollouts running = rollouts) {
            return new RolloutSummary(asked, net, settings, legal, plays, names, report(running));
        } catch (CancellationException e) {
            throw new UserError(e.getMessage() + ": nothing is known yet");
        }
    }

    private RolloutReport report(Rollouts running) {
        if (asked.roll() != null) {
            return running.compare(asked.position(), asked.roll(), plays, asked.stakes(), asked.cube(), file, progress);
        }
        return asked.cubeful()
                ? running.actions(asked.position(), asked.cube(), asked.stakes(), file, progress)
                : running.odds(asked.position(), file, progress);
    }

    private String standings(RolloutReport report) {
        return RolloutProgress.line(
                report.trials(),
                settings.trials(),
                report.lines().stream()
                        .map(line -> RolloutProgress.standing(
                                asked.roll() == null && !asked.cubeful() ? "" : names.get(line.candidate()),
                                line.value())));
    }
}
