package org.pipwright.engine.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.rollout.ActionStanding;
import org.pipwright.engine.rollout.CubefulLine;
import org.pipwright.engine.rollout.CubefulRolloutReport;
import org.pipwright.engine.rollout.CubefulRollouts;
import org.pipwright.engine.rollout.CubefulStart;
import org.pipwright.engine.rollout.RolloutFile;

/** Plays on with the cube: from plays of a roll, or from each action before the roll. */
final class Games {
    private final Thinking thinking;
    private final Effort effort;

    Games(Thinking thinking, Effort effort) {
        this.thinking = thinking;
        this.effort = effort;
    }

    /** The plays to be played out: those asked about, or the best few. */
    static List<Play> candidates(Verdict verdict) {
        return verdict.question().only().isEmpty()
                ? verdict.candidates(Verdict.CANDIDATES)
                : verdict.plays().stream().map(PlayVerdict::play).collect(Collectors.toList());
    }

    /** The plays of a verdict with the candidates played out. The chances stay: games tell the value. */
    List<PlayVerdict> plays(Verdict verdict) {
        Question question = verdict.question();
        List<Play> candidates = candidates(verdict);
        List<CubefulStart> starts = candidates.stream()
                .map(play -> CubefulStart.after(play, question.cube()))
                .collect(Collectors.toList());
        CubefulRolloutReport report = withRollouts(rollouts ->
                rollouts.compare(starts, question.stakes(), question.cube().value(), thinking.gamesListener()));
        List<PlayVerdict> plays = new ArrayList<>(verdict.plays());
        for (CubefulLine line : report.lines()) {
            Play play = candidates.get(line.candidate());
            plays.replaceAll(each ->
                    each.play().equals(play) ? each.playedOut(line.value().mean(), depth(report, line)) : each);
        }
        return plays;
    }

    /** The values of the actions before the roll, and how deep that of the right one is. */
    record Actions(CubeValues values, Depth depth) {}

    /** What games make of the values of a position. */
    Actions actions(Question question) {
        CubefulRolloutReport report = withRollouts(rollouts -> rollouts.actions(
                question.position(), question.cube(), question.stakes(), RolloutFile.NONE, thinking.gamesListener()));
        CubeValues values = report.actions().orElseThrow().values();
        return new Actions(values, new Depth(0, report.trials(), error(report, values)));
    }

    /** Of the value of the right action; what a pass leaves is known. */
    private static double error(CubefulRolloutReport report, CubeValues values) {
        if (!values.shouldDouble()) {
            return report.of(ActionStanding.ROLL).value().standardError();
        }
        switch (values.answer()) {
            case PASS:
                return 0;
            case BEAVER:
                return report.of(ActionStanding.BEAVER).value().standardError();
            default:
                return report.of(ActionStanding.TAKE).value().standardError();
        }
    }

    private static Depth depth(CubefulRolloutReport report, CubefulLine line) {
        return new Depth(0, report.trials(), line.value().standardError());
    }

    private CubefulRolloutReport withRollouts(Function<CubefulRollouts, CubefulRolloutReport> playing) {
        try (CubefulRollouts rollouts = new CubefulRollouts(
                () -> thinking.knowledge().judgement().evaluator(),
                thinking.knowledge()::terms,
                effort.rollout(),
                thinking.threads())) {
            return playing.apply(rollouts);
        }
    }
}
