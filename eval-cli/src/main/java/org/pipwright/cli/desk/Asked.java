package org.pipwright.cli.desk;

import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;

/**
 * What a page says at once of what is set up.
 *
 * @param answer the answer, as deep as it is known
 * @param play the play that was chosen
 * @param next the lookahead that is to come next; negative if nothing more is to come
 * @param said the same in a sentence, for those who hear it
 */
record Asked(AnswerView answer, Optional<PlayView> play, int next, String said) {
    private static final long PATIENCE_NANOS = 3_000_000_000L;
    private static final int NOTHING = -1;

    /** Asks the net, without lookahead unless more is known already. */
    static Asked of(Setting setting, Opinions opinions) {
        Optional<Question> question = setting.question();
        if (question.isEmpty()) {
            return none(why(setting), NOTHING);
        }
        try {
            return answered(setting, question.get(), opinions);
        } catch (CancellationException e) {
            return thinking(opinions);
        } catch (IllegalArgumentException e) {
            return none(e.getMessage(), NOTHING);
        }
    }

    private static Asked none(String why, int next) {
        return new Asked(AnswerView.none("Answer", why), Optional.empty(), next, why);
    }

    private static Asked thinking(Opinions opinions) {
        return none(opinions.net() + " thinks …", 0);
    }

    private static Asked answered(Setting setting, Question question, Opinions opinions) {
        int most = setting.asking().ahead();
        Optional<Opinions.Known> known = opinions.deepest(question, most);
        if (known.isEmpty() && !opinions.ready()) {
            return thinking(opinions);
        }
        long until = System.nanoTime() + PATIENCE_NANOS;
        BooleanSupplier overdue = () -> System.nanoTime() > until;
        Opinions.Known shown = known.orElseGet(() -> new Opinions.Known(opinions.at(question, 0, overdue), 0));
        Verdict verdict = shown.verdict();
        Optional<PlayView> play = setting.asking().play().map(chosen -> opinions.judge()
                .inTurn(overdue, judge -> PlayView.of(setting, verdict, judge, opinions.knowledge())));
        boolean more = shown.lookahead() < most && (question.roll() != null || verdict.basis() == Basis.ESTIMATED);
        AnswerView view = AnswerViews.of(setting, verdict, opinions.net());
        return new Asked(view, play, more ? shown.lookahead() + 1 : NOTHING, AnswerViews.said(view));
    }

    private static String why(Setting setting) {
        return setting.layout()
                .position()
                .map(position -> (position.borneOff() == position.checkers() ? "You have" : "The opponent has")
                        + " borne off every checker: the game is over.")
                .orElse("No checker stands on the board yet: put some of each side there.");
    }
}
