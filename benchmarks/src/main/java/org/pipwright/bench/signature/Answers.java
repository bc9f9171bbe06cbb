package org.pipwright.bench.signature;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.pipwright.bench.Nets;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.review.ReviewSettings;
import org.pipwright.engine.review.ReviewedTurn;
import org.pipwright.engine.review.Reviews;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.engine.rollout.Start;

/** What a judge with a net and the exact tables says to fixed questions of every kind: lines, numbers to four digits. */
final class Answers {
    private static final int THREADS = 2;

    private final Knowledge knowledge;

    Answers(Model model) {
        knowledge = Nets.withTables(model, THREADS);
    }

    /** Plays ranked without the cube. */
    List<String> rank(List<Position> positions, int lookahead) {
        return lines(
                positions,
                lookahead,
                i -> Question.of(positions.get(i), Fixed.roll(i)),
                verdict -> verdict.plays().stream()
                        .map(play -> verdict.question().roll() + " " + play.play() + " " + play.depth() + " "
                                + number(play.value()))
                        .collect(Collectors.toList()));
    }

    /** Plays ranked with the cube. */
    List<String> rank(List<Position> positions, Setting setting, int lookahead) {
        return lines(
                positions,
                lookahead,
                i -> Question.of(positions.get(i), Fixed.roll(i)).with(setting.stakes(), Setting.CUBE),
                verdict -> verdict.plays().stream()
                        .map(play -> verdict.question().roll() + " " + play.play() + " " + play.depth() + " "
                                + number(play.value()) + " " + number(play.equity()))
                        .collect(Collectors.toList()));
    }

    /** Chances before the roll. */
    List<String> odds(List<Position> positions, int lookahead) {
        return lines(
                positions,
                lookahead,
                i -> Question.before(positions.get(i)),
                verdict -> List.of(chances(verdict.outcomes())));
    }

    /** Values of the cube actions before the roll. */
    List<String> cube(List<Position> positions, Setting setting, int lookahead) {
        return lines(
                positions,
                lookahead,
                i -> Question.before(positions.get(i)).with(setting.stakes(), Setting.CUBE),
                verdict -> List.of(values(verdict.cube())));
    }

    /** Chances by games without the cube. */
    List<String> rollout(Position from, RolloutSettings settings) {
        try (Rollouts rollouts = new Rollouts(knowledge::judgement, settings, THREADS)) {
            RolloutReport report = rollouts.odds(from, WorkFile.NONE, RolloutListener.NONE);
            return report.lines().stream()
                    .map(line -> chances(line.outcomes()) + " "
                            + number(line.value().standardError()) + " " + number(line.reduction()))
                    .collect(Collectors.toList());
        }
    }

    /** Rolling and doubling compared by games with the cube. */
    List<String> rollout(Position from, Setting setting, RolloutSettings settings) {
        List<Start> starts = List.of(Start.rolling(from, Setting.CUBE), Start.rolling(from, Setting.CUBE.taken()));
        try (Rollouts rollouts = new Rollouts(knowledge::judgement, knowledge::terms, settings, THREADS)) {
            RolloutReport report = rollouts.compare(starts, setting.stakes(), 1, WorkFile.NONE, RolloutListener.NONE);
            return report.lines().stream()
                    .map(line -> line.candidate() + " " + number(line.value().mean()) + " "
                            + number(line.value().standardError()) + " "
                            + number(line.cube().orElseThrow().passed()))
                    .collect(Collectors.toList());
        }
    }

    /** A game reviewed. */
    List<String> review(GameRecord record, int lookahead) {
        Reviews reviews = new Reviews(knowledge, new ReviewSettings(lookahead, 0, 1, true), THREADS);
        List<String> lines = new ArrayList<>();
        for (ReviewedTurn turn :
                reviews.review(record, WorkFile.NONE, Progress.NONE).turns()) {
            lines.add(chances(turn.finding().chances()) + " luck " + number(turn.luckTotal()));
            turn.finding().cube().ifPresent(values -> lines.add(values(values)));
            turn.finding().options().forEach(play -> lines.add(play.play() + " " + number(play.value())));
            turn.decisions().forEach(each -> lines.add(each.kind() + " " + number(each.points())));
        }
        return lines;
    }

    private List<String> lines(
            List<Position> positions,
            int lookahead,
            Function<Integer, Question> asked,
            Function<Verdict, List<String>> told) {
        try (Judge judge = new Judge(knowledge, THREADS)) {
            return IntStream.range(0, positions.size())
                    .boxed()
                    .flatMap(i -> told.apply(judge.ask(asked.apply(i), Effort.lookahead(lookahead))).stream()
                            .map(line -> positions.get(i) + " " + line))
                    .collect(Collectors.toList());
        }
    }

    private static String chances(Outcomes six) {
        return number(six.win()) + " " + number(six.winGammon()) + " " + number(six.winBackgammon()) + " "
                + number(six.loseGammon()) + " " + number(six.loseBackgammon()) + " " + number(six.equity());
    }

    private static String values(CubeValues values) {
        return "cube " + values.mayDouble() + " " + number(values.noDouble()) + " " + number(values.doubleTake()) + " "
                + number(values.doublePass());
    }

    private static String number(double value) {
        // Not -0.0000 here and 0.0000 there.
        return String.format(Locale.ROOT, "%.4f", Math.round(value * 1e4) / 1e4 + 0.0);
    }
}
