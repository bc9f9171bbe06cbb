package org.pipwright.engine.review;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.ranking.Grade;

/** Finds out about single turns. What it finds depends on the turn and the settings alone. Serves one thread. */
final class Reviewer implements AutoCloseable {
    private final ReviewSettings settings;
    private final Function<Stakes, CubeTerms> terms;
    private final Judge judge;
    private final Progress progress;

    Reviewer(Knowledge knowledge, ReviewSettings settings, BooleanSupplier stopped) {
        this.settings = settings;
        terms = knowledge.terms();
        judge = new Judge(knowledge, 1);
        progress = Progress.until(stopped);
    }

    Finding find(Moment moment) {
        Optional<Question> rolled = moment.played()
                .map(turn -> Question.of(moment.position(), turn.roll()).with(moment.stakes(), moment.rolling()));
        // First: what comes next then finds all rolls of this position looked at already.
        OptionalDouble luck = rolled.map(
                        question -> OptionalDouble.of(judge.luck(question, moment.opening(), progress)))
                .orElse(OptionalDouble.empty());
        Question before = Question.before(moment.position());
        Question asked = moment.mayDouble() ? before.with(moment.stakes(), moment.cube()) : before;
        Verdict verdict = judge.ask(asked, settings.effort(), progress);
        Verdict actions = playedOut(moment, verdict);
        List<PlayVerdict> options = rolled.map(question -> new PlayChoice(judge, settings, progress)
                        .options(question, moment.played().get().play()))
                .orElse(List.of());
        return new Finding(verdict.outcomes(), Optional.ofNullable(actions.cube()), luck, actions.basis(), options);
    }

    /** With games if lookahead finds that what was done with the cube costs something. */
    private Verdict playedOut(Moment moment, Verdict verdict) {
        if (settings.games() == 0
                || verdict.cube() == null
                || verdict.basis() == Basis.EXACT
                || !costly(moment, verdict.cube(), terms.apply(moment.stakes()))) {
            return verdict;
        }
        return judge.ask(verdict.question(), settings.playingOut(), progress);
    }

    private static boolean costly(Moment moment, CubeValues values, CubeTerms mine) {
        return Decisions.ofCube(moment, values, mine).stream().anyMatch(decision -> decision.grade() != Grade.FINE);
    }

    @Override
    public void close() {
        judge.close();
    }
}
