package org.pipwright.engine.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.rollout.ActionStanding;
import org.pipwright.engine.rollout.RolloutLine;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.Rollouts;

/** Plays on: from plays of a roll, before the roll, or with the cube from each action before the roll. */
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

    /** The plays of a verdict with the candidates played out. With the cube the chances stay: games tell the value. */
    List<PlayVerdict> plays(Verdict verdict) {
        Question question = verdict.question();
        List<Play> candidates = candidates(verdict);
        RolloutReport report = withRollouts(rollouts -> rollouts.compare(
                question.position(),
                question.roll(),
                candidates,
                question.stakes(),
                question.cube(),
                WorkFile.NONE,
                thinking.gamesListener()));
        List<PlayVerdict> plays = new ArrayList<>(verdict.plays());
        for (RolloutLine line : report.lines()) {
            Play play = candidates.get(line.candidate());
            plays.replaceAll(each -> each.play().equals(play) ? playedOut(each, report, line) : each);
        }
        return plays;
    }

    /** The values of the actions before the roll, and how deep that of the right one is. */
    record Actions(CubeValues values, Depth depth) {}

    /** What games make of the values of a position. */
    Actions actions(Question question) {
        RolloutReport report = withRollouts(rollouts -> rollouts.actions(
                question.position(), question.cube(), question.stakes(), WorkFile.NONE, thinking.gamesListener()));
        CubeValues values = report.actions().orElseThrow().values();
        return new Actions(values, new Depth(0, report.trials(), error(report, values)));
    }

    /** Of the value of the right action; what a pass leaves is known. */
    private static double error(RolloutReport report, CubeValues values) {
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

    private static PlayVerdict playedOut(PlayVerdict play, RolloutReport report, RolloutLine line) {
        double value = line.value().mean();
        return line.chances().isEmpty()
                ? play.playedOut(value, depth(report, line))
                : play.playedOut(value, line.outcomes(), depth(report, line));
    }

    /** The chances before the roll, without the cube. */
    Verdict odds(Question question) {
        RolloutReport report =
                withRollouts(rollouts -> rollouts.odds(question.position(), WorkFile.NONE, thinking.gamesListener()));
        RolloutLine line = report.lines().get(0);
        return new Verdict(
                question,
                line.value().mean(),
                line.outcomes(),
                depth(report, line),
                Basis.ESTIMATED,
                List.of(),
                null,
                1);
    }

    private static Depth depth(RolloutReport report, RolloutLine line) {
        return new Depth(0, report.trials(), line.value().standardError());
    }

    private RolloutReport withRollouts(Function<Rollouts, RolloutReport> playing) {
        try (Rollouts rollouts = new Rollouts(
                thinking.knowledge()::judgement, thinking.knowledge()::terms, effort.rollout(), thinking.threads())) {
            return playing.apply(rollouts);
        }
    }
}
