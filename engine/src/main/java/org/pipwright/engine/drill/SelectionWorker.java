package org.pipwright.engine.drill;

import java.util.Optional;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.judge.Question;

/** Makes exercises of single decisions. Serves one thread. */
final class SelectionWorker implements AutoCloseable {
    private final SelectionSettings settings;
    private final Knowledge knowledge;
    private final Judge judge;
    private final Progress progress;
    private final PlayLook look;

    SelectionWorker(SelectionSettings settings, Knowledge knowledge, Progress progress) {
        this.settings = settings;
        this.knowledge = knowledge;
        this.judge = new Judge(knowledge, 1);
        this.progress = progress;
        this.look = new PlayLook(settings.clarity(), judge, progress);
    }

    /** The exercise that a decision makes; empty if it is not about the theme, or not hard and clear enough. */
    Optional<Exercise> exercise(Candidate candidate) {
        boolean about = settings.theme()
                .map(theme -> theme.cube() != candidate.play()
                        && theme.comesUpIn(candidate.question().position()))
                .orElse(true);
        if (!about) {
            return Optional.empty();
        }
        return candidate.play()
                ? look.exercise(candidate.origin(), candidate.question(), candidate.played(), this::good)
                        .map(exercise -> exercise)
                : Optional.of(cube(candidate)).filter(this::good).map(exercise -> exercise);
    }

    private boolean good(PlayExercise exercise, double share) {
        return !settings.sifted()
                || settings.clarity().met(exercise, share)
                        && settings.theme()
                                .map(theme -> theme.setsApart(exercise))
                                .orElse(true);
    }

    private boolean good(CubeExercise exercise) {
        // Two choices are offered, and a beaver is neither.
        return exercise.best() != CubeAction.BEAVER
                && (!settings.sifted()
                        || settings.clarity().met(exercise, 1)
                                && settings.theme()
                                        .map(theme -> about(theme, exercise))
                                        .orElse(true));
    }

    private boolean about(Theme theme, CubeExercise exercise) {
        switch (theme) {
            case RACE_DOUBLES:
                return !exercise.answering() && Lesson.raceDouble(exercise, chances(exercise));
            case TAKES_AND_PASSES:
                return exercise.answering();
            default:
                return exercise.stakes() instanceof MatchStakes && scoreMatters(exercise);
        }
    }

    /** In money play the answer would be another. */
    private boolean scoreMatters(CubeExercise exercise) {
        Question money = Question.before(exercise.position()).with(MoneyStakes.USUAL, exercise.cube());
        return CubeExercise.right(values(money), exercise.answering()) != exercise.best();
    }

    private Outcomes chances(CubeExercise exercise) {
        Question before = Question.before(exercise.position());
        return judge.ask(before, settings.clarity().effort(), progress).outcomes();
    }

    private CubeValues values(Question question) {
        return judge.ask(question, settings.clarity().effort(), progress).cube();
    }

    private CubeExercise cube(Candidate candidate) {
        Question question = candidate.question();
        CubeTerms terms = knowledge.terms().apply(question.stakes());
        CubeExercise exercise = new CubeExercise(
                candidate.origin(),
                question.position(),
                question.cube(),
                question.stakes(),
                values(question),
                terms.point(question.cube()),
                candidate.answering(),
                candidate.done().orElse(CubeAction.ROLL));
        return candidate.done().isPresent() ? exercise : exercise.withWeak(exercise.worse());
    }

    @Override
    public void close() {
        judge.close();
    }
}
