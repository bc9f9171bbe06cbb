package org.pipwright.cli.desk;

import java.util.List;
import java.util.Locale;
import org.pipwright.cli.report.Numbers;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Verdict;

/**
 * What a net thinks of the decision at hand, as a page shows it.
 *
 * @param heading what is asked
 * @param value what the values are
 * @param rows the choices: plays best first, or what can be done about the cube
 */
public record Opinion(String heading, String value, List<Row> rows) {
    private static final int PLAYS = 8;

    /**
     * A choice.
     *
     * @param choice what it is
     * @param value what it is worth
     * @param grade what it costs, in a word
     */
    public record Row(String choice, String value, String grade) {}

    static Opinion of(Verdict verdict, String net) {
        boolean match = verdict.question().stakes() instanceof MatchStakes;
        String value = match ? "wins match, %" : "equity";
        if (verdict.plays().isEmpty()) {
            return new Opinion(
                    net + " about the cube",
                    match ? "doubler wins match, %" : "points to the doubler",
                    verdict.cube().choices().stream()
                            .map(action -> row(verdict, action, match))
                            .toList());
        }
        return new Opinion(
                net + " about " + verdict.question().roll(),
                value,
                verdict.plays().stream()
                        .limit(PLAYS)
                        .map(play -> row(play, match))
                        .toList());
    }

    private static Row row(PlayVerdict play, boolean match) {
        return new Row(
                play.play().toString(),
                number(play.value(), match),
                play.grade().word());
    }

    private static Row row(Verdict verdict, CubeAction action, boolean match) {
        return new Row(
                action.name().toLowerCase(Locale.ROOT),
                number(worth(verdict, action), match),
                verdict.grade(action).word());
    }

    private static double worth(Verdict verdict, CubeAction action) {
        switch (action) {
            case ROLL:
                return verdict.cube().noDouble();
            case DOUBLE:
                return verdict.cube().doubled();
            case TAKE:
                return verdict.cube().doubleTake();
            case BEAVER:
                return verdict.cube().doubleBeaver();
            default:
                return verdict.cube().doublePass();
        }
    }

    private static String number(double value, boolean match) {
        return match ? Numbers.finePercent(value) : Numbers.points(value);
    }
}
