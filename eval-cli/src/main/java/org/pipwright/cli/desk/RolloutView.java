package org.pipwright.cli.desk;

import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.cli.report.Numbers;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.rollout.RolloutLine;
import org.pipwright.engine.rollout.RolloutReport;

/**
 * The standings of a rollout, as a page shows them.
 *
 * @param games games of each candidate so far
 * @param most how many there will be
 * @param ended whether it has ended
 * @param match whether values are chances to win the match, in per cent
 * @param rows the candidates, best first
 */
public record RolloutView(int games, int most, boolean ended, boolean match, List<Row> rows) {
    /**
     * A candidate.
     *
     * @param name what it is
     * @param value its mean
     * @param error standard error of that
     * @param behind how far it is behind the best; empty for the best
     * @param behindError standard error of that
     */
    public record Row(String name, String value, String error, String behind, String behindError) {}

    static RolloutView of(Question question, List<String> names, int most, RolloutReport report, boolean ended) {
        boolean match = question.stakes() instanceof MatchStakes;
        List<Row> rows = report.lines().stream()
                .map(line -> row(
                        line,
                        names.get(line.candidate()),
                        match,
                        line == report.lines().get(0)))
                .collect(Collectors.toList());
        return new RolloutView(report.trials(), most, ended, match, rows);
    }

    private static Row row(RolloutLine line, String name, boolean match, boolean best) {
        return new Row(
                name,
                match
                        ? Numbers.finePercent(line.value().mean())
                        : Numbers.points(line.value().mean()),
                error(line.value().standardError(), match),
                best
                        ? ""
                        : match
                                ? Numbers.percentCost(line.behind().mean())
                                : Numbers.cost(line.behind().mean()),
                best ? "" : error(line.behind().standardError(), match));
    }

    private static String error(double error, boolean match) {
        return match ? Numbers.finePercent(error) : Numbers.size(error);
    }

    /** The standings in one sentence, for those who hear them. */
    static String said(RolloutView view) {
        Row best = view.rows().get(0);
        return view.games() + " games: " + best.name() + " " + best.value() + ", standard error " + best.error();
    }
}
