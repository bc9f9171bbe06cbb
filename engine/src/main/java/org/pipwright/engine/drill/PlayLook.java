package org.pipwright.engine.drill;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiPredicate;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;

/** Judges the plays of a roll for an exercise, deeper and deeper as long as it promises to be one. Serves one thread. */
final class PlayLook {
    /** So many plays at least get the full lookahead. */
    private static final int DEEP = 5;

    /** So many, and the weaker one, decide in nearly all cases whether there is an exercise. */
    private static final int TOLD_APART = 2;

    private final Clarity clarity;
    private final Judge judge;
    private final Progress progress;

    PlayLook(Clarity clarity, Judge judge, Progress progress) {
        this.clarity = clarity;
        this.judge = judge;
        this.progress = progress;
    }

    /**
     * An exercise about a roll with two plays or more.
     *
     * @param other what the weaker play leads to, seen from the side that plays; empty for the second best play
     * @param good whether an exercise will do, wholly or, at a first look, by a share
     */
    Optional<PlayExercise> exercise(
            Origin origin, Question question, Optional<Position> other, BiPredicate<PlayExercise, Double> good) {
        PlayExercise exercise = null;
        for (int lookahead = Math.min(1, clarity.lookahead()); lookahead <= clarity.lookahead(); lookahead++) {
            // Only the last look needs to know races that well.
            boolean simulated = clarity.simulateRaces() && lookahead == clarity.lookahead();
            Effort effort = Effort.lookahead(lookahead).withRaces(simulated);
            List<PlayVerdict> ranking = judge.ask(question, effort, progress).plays();
            exercise = new PlayExercise(origin, question, ranking, weak(ranking, other));
            if (!good.test(exercise, Clarity.FIRST_LOOK)) {
                return Optional.empty();
            }
        }
        PlayExercise toldApart = deepened(exercise, TOLD_APART, other);
        return good.test(toldApart, 1.0)
                ? Optional.of(deepened(toldApart, DEEP, other)).filter(last -> good.test(last, 1.0))
                : Optional.empty();
    }

    private static PlayVerdict weak(List<PlayVerdict> ranking, Optional<Position> other) {
        return other.map(result -> of(ranking, result)).orElse(ranking.get(1));
    }

    private static PlayVerdict of(List<PlayVerdict> ranking, Position result) {
        return ranking.stream()
                .filter(ranked -> ranked.play().result().equals(result))
                .findFirst()
                .orElseThrow();
    }

    /** The same with the best few plays and the weaker one all looked at equally deeply. */
    private PlayExercise deepened(PlayExercise exercise, int few, Optional<Position> other) {
        List<Play> some = new ArrayList<>();
        List<PlayVerdict> all = new ArrayList<>();
        for (PlayVerdict ranked : exercise.ranking()) {
            Play play = ranked.play();
            boolean full = ranked.depth().lookahead() == clarity.lookahead();
            if (full || some.size() < few || ranked.equals(exercise.weak())) {
                some.add(play);
            } else {
                all.add(ranked);
            }
        }
        Verdict verdict = judge.ask(exercise.asked().only(some), clarity.effort(), progress);
        all.addAll(verdict.plays());
        List<PlayVerdict> ranking = PlayVerdict.inOrder(all, verdict.point());
        return new PlayExercise(exercise.origin(), exercise.asked(), ranking, weak(ranking, other));
    }
}
