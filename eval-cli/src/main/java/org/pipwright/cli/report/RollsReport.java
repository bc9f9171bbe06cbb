package org.pipwright.cli.report;

import java.util.List;
import java.util.Optional;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;

/**
 * The best play of each roll from one position.
 *
 * @param verdicts one for each of the 21 rolls, under the same stakes
 * @param net the net that judged
 * @param before the turns played before, as in {@code 3-1: 8/5 6/5}; empty if there were none
 */
public record RollsReport(List<Verdict> verdicts, NetLabel net, String before) {
    private static final double THROWS = 36;

    /** Plays of each roll that are shown: the best and the next best. */
    static final int PLAYS = 2;

    /** What was asked of the first roll; the others differ in nothing but the roll. */
    Question question() {
        return verdicts.get(0).question();
    }

    boolean match() {
        return question().stakes() instanceof MatchStakes;
    }

    static PlayVerdict best(Verdict verdict) {
        return verdict.plays().get(0);
    }

    /** Empty where there is no choice. */
    static Optional<PlayVerdict> next(Verdict verdict) {
        return verdict.plays().stream().skip(1).findFirst();
    }

    /**
     * The plays of a roll that are shown.
     *
     * @param verdict the verdict on the roll
     * @return the best and the next best, if there is one
     */
    public static List<PlayVerdict> shown(Verdict verdict) {
        return verdict.plays().subList(0, Math.min(PLAYS, verdict.plays().size()));
    }

    /** What the best plays are worth on average over the 36 throws. */
    double mean() {
        return verdicts.stream()
                        .mapToDouble(each ->
                                each.question().roll().ways() * best(each).value())
                        .sum()
                / THROWS;
    }

    String value(double value) {
        return match() ? Numbers.finePercent(value) : Numbers.points(value);
    }

    String cost(double cost) {
        return match() ? Numbers.percentCost(cost) : Numbers.cost(cost);
    }

    String unit() {
        return match() ? "match, %" : "equity";
    }
}
