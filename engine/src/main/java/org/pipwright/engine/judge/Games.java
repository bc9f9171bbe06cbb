package org.pipwright.engine.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.rollout.CubefulLine;
import org.pipwright.engine.rollout.CubefulRolloutReport;
import org.pipwright.engine.rollout.CubefulRollouts;
import org.pipwright.engine.rollout.CubefulStart;

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
        CubefulRolloutReport report = run(
                question,
                candidates.stream()
                        .map(play -> CubefulStart.after(play, question.cube()))
                        .collect(Collectors.toList()));
        List<PlayVerdict> plays = new ArrayList<>(verdict.plays());
        for (CubefulLine line : report.lines()) {
            Play play = candidates.get(line.candidate());
            plays.replaceAll(each -> each.play().equals(play)
                    ? each.playedOut(line.value().mean(), each.outcomes(), depth(report, line))
                    : each);
        }
        return plays;
    }

    /** The values of the actions before the roll, and how deep that of the right one is. */
    record Actions(CubeValues values, Depth depth) {}

    /** What games make of the values of a position. */
    Actions actions(Question question, CubeValues before) {
        CubeState cube = question.cube();
        Stakes stakes = question.stakes();
        List<CubefulStart> starts = new ArrayList<>(List.of(CubefulStart.rolling(question.position(), cube)));
        if (stakes.mayDouble(cube)) {
            starts.add(CubefulStart.rolling(question.position(), cube.taken()));
        }
        if (before.mayBeaver()) {
            starts.add(CubefulStart.rolling(question.position(), cube.beavered()));
        }
        CubefulRolloutReport report = run(question, starts);
        double roll = report.of(0).value().mean();
        double take = before.mayDouble() ? report.of(1).value().mean() : roll;
        double beaver = before.mayBeaver() ? report.of(2).value().mean() : take;
        CubeValues values =
                new CubeValues(before.mayDouble(), before.mayBeaver(), roll, take, before.doublePass(), beaver);
        return new Actions(values, new Depth(0, report.trials(), error(report, values)));
    }

    /** Of the value of the right action; what a pass leaves is known. */
    private static double error(CubefulRolloutReport report, CubeValues values) {
        if (!values.shouldDouble()) {
            return report.of(0).value().standardError();
        }
        switch (values.answer()) {
            case PASS:
                return 0;
            case BEAVER:
                return report.of(2).value().standardError();
            default:
                return report.of(1).value().standardError();
        }
    }

    private static Depth depth(CubefulRolloutReport report, CubefulLine line) {
        return new Depth(0, report.trials(), line.value().standardError());
    }

    private CubefulRolloutReport run(Question question, List<CubefulStart> starts) {
        try (CubefulRollouts rollouts = new CubefulRollouts(
                () -> thinking.knowledge().judgement().evaluator(),
                thinking.knowledge()::terms,
                effort.rollout(),
                thinking.threads())) {
            return rollouts.compare(starts, question.stakes(), question.cube().value(), thinking.gamesListener());
        }
    }
}
