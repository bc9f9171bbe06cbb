package org.pipwright.cli.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.pipwright.cli.report.CubeWords;
import org.pipwright.cli.report.Numbers;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;

/** Makes views of answers: the same numbers as {@code rank}, {@code odds} and {@code cube} print. */
final class AnswerViews {
    private static final int PLAYS = 12;

    /** Plays that are ticked to be rolled out. */
    private static final int CLOSE = 3;

    private final Setting setting;
    private final Verdict verdict;
    private final boolean match;

    private AnswerViews(Setting setting, Verdict verdict) {
        this.setting = setting;
        this.verdict = verdict;
        match = verdict.question().stakes() instanceof MatchStakes;
    }

    /** The view of an answer about what is set up. */
    static AnswerView of(Setting setting, Verdict verdict, String net) {
        return new AnswerViews(setting, verdict).view(net);
    }

    private AnswerView view(String net) {
        Question question = verdict.question();
        boolean plays = question.roll() != null;
        return new AnswerView(
                plays ? "Plays of " + question.roll() + ", by " + net : "Before the roll, by " + net,
                verdict.depth().toString(),
                plays || verdict.basis().title().equals("estimated")
                        ? ""
                        : "Chances " + verdict.basis().title() + ".",
                match,
                question.cubeful(),
                plays ? rows() : List.of(),
                plays ? List.of() : chances(verdict.outcomes()),
                plays || verdict.cube() == null ? List.of() : actions(verdict.cube()),
                plays || verdict.cube() == null
                        ? ""
                        : CubeWords.verdict(verdict.cube(), question.cube(), question.stakes()),
                !question.position().finished());
    }

    private List<AnswerView.Row> rows() {
        List<PlayVerdict> shown = new ArrayList<>(
                verdict.plays().subList(0, Math.min(PLAYS, verdict.plays().size())));
        verdict.plays().stream().skip(PLAYS).filter(this::chosen).forEach(shown::add);
        return shown.stream().map(this::row).collect(Collectors.toList());
    }

    private boolean chosen(PlayVerdict play) {
        return setting.asking()
                .play()
                .filter(other -> other.result().equals(play.play().result()))
                .isPresent();
    }

    private AnswerView.Row row(PlayVerdict play) {
        Outcomes chances = play.outcomes();
        String text = play.play().toString();
        return new AnswerView.Row(
                text,
                "out-" + text.replace('*', 'x').replaceAll("[^0-9a-z]", "_"),
                setting.choosing(chosen(play) ? null : play.play()).address(),
                chosen(play),
                verdict.candidates(CLOSE).contains(play.play()),
                number(play.value()),
                cost(verdict, play.cost()),
                play.grade().word(),
                Integer.toString(play.depth().lookahead()),
                Numbers.percent(chances.win()),
                Numbers.percent(chances.winGammon() + chances.winBackgammon()),
                Numbers.percent(chances.loseGammon() + chances.loseBackgammon()));
    }

    private static List<List<String>> chances(Outcomes outcomes) {
        return List.of(side(outcomes), side(outcomes.swapped()));
    }

    private static List<String> side(Outcomes side) {
        return List.of(
                Numbers.percent(side.winSingle()),
                Numbers.percent(side.winGammon()),
                Numbers.percent(side.winBackgammon()),
                Numbers.percent(side.win()));
    }

    private List<AnswerView.Action> actions(CubeValues values) {
        List<AnswerView.Action> actions = new ArrayList<>();
        actions.add(action("roll", values.noDouble(), CubeAction.ROLL));
        if (values.mayDouble()) {
            actions.add(action("double, take", values.doubleTake(), CubeAction.TAKE));
            actions.add(action("double, pass", values.doublePass(), CubeAction.PASS));
            if (values.mayBeaver()) {
                actions.add(action("double, beaver", values.doubleBeaver(), CubeAction.BEAVER));
            }
            actions.add(action("double, best answer", values.doubled(), CubeAction.DOUBLE));
        }
        return actions;
    }

    private AnswerView.Action action(String words, double value, CubeAction action) {
        double cost = verdict.cube().cost(action);
        return new AnswerView.Action(
                words, number(value), cost(verdict, cost), verdict.grade(action).word());
    }

    private String number(double value) {
        return match ? Numbers.finePercent(value) : Numbers.points(value);
    }

    /** A cost as an answer's table has it. */
    static String cost(Verdict verdict, double cost) {
        return verdict.question().stakes() instanceof MatchStakes ? Numbers.percentCost(cost) : Numbers.cost(cost);
    }

    /** The answer in one sentence, for those who hear it: the play that is shown, else the best. */
    static String said(AnswerView view) {
        Optional<AnswerView.Row> chosen =
                view.rows().stream().filter(AnswerView.Row::chosen).findFirst();
        if (chosen.isPresent()) {
            AnswerView.Row row = chosen.get();
            return "At " + view.depth() + ": " + row.play() + " " + row.value()
                    + (row == view.rows().get(0) ? ", the best." : ", " + row.grade() + ", cost " + row.cost() + ".");
        }
        String what = view.rows().isEmpty()
                ? view.sentence().isEmpty() ? "wins " + view.chances().get(0).get(3) + " per cent" : view.sentence()
                : "best is " + view.rows().get(0).play() + ", "
                        + view.rows().get(0).value();
        return "At " + view.depth() + ": " + what;
    }
}
