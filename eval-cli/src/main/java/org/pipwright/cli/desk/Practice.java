package org.pipwright.cli.desk;

import java.io.IOException;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import org.pipwright.cli.report.DrillWords;
import org.pipwright.cli.report.GivenAway;
import org.pipwright.cli.report.Reasoning;
import org.pipwright.cli.report.Reasons;
import org.pipwright.engine.drill.CubeExercise;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.drill.PlayExercise;
import org.pipwright.engine.files.Reason;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.play.IllegalPlayException;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.ranking.Grade;

/**
 * Exercises asked one at a time. What was answered wrongly comes again after a few others. The next one is looked for while
 * the page is open.
 */
final class Practice {
    /** So many others come before something is asked again. */
    static final int OTHERS = 3;

    private static final Duration AT_ONCE = Duration.ofMillis(30);

    private final PracticeSources.Chosen chosen;
    private final Supplier<Knowledge> knowledge;
    private final Executor executor;
    private final int threads;
    private final PracticeLog log;

    // Guarded by this.
    private final ArrayDeque<Due> again = new ArrayDeque<>();
    private Thought<Optional<Asked>> next;
    private boolean exhausted;
    private Asked shown;
    private Answered answered;
    private int asked;
    private int right;
    private int wrong;

    /**
     * An exercise that can be asked.
     *
     * @param exercise the exercise
     * @param reasons why its answer is right
     * @param before how often it was answered wrongly before
     */
    record Asked(Exercise exercise, Reasons reasons, int before) {}

    /**
     * An answer.
     *
     * @param words what was answered
     * @param right whether it was right: the best choice, or one that costs next to nothing
     * @param cost what it cost, in points, at most 0
     * @param given the same in words, in the unit of the exercise
     */
    record Answered(String words, boolean right, double cost, String given) {
        Grade grade() {
            return Grade.ofCost(cost);
        }
    }

    private record Due(Asked asked, int from) {}

    /**
     * What a page is to show.
     *
     * @param asked the exercise; empty while it is looked for, or if there are no more
     * @param answered how it was answered; empty before
     * @param number number of the question
     * @param right questions answered rightly so far
     * @param wrong questions answered wrongly so far
     * @param waiting wrong ones that will be asked again
     * @param over whether there are no more
     */
    record Standing(
            Optional<Asked> asked,
            Optional<Answered> answered,
            int number,
            int right,
            int wrong,
            int waiting,
            boolean over) {}

    /**
     * No exercise yet.
     *
     * @param chosen what is practised
     * @param knowledge what right answers are found with
     * @param executor who looks for the next one
     * @param threads number of threads, at least 1
     * @param log where answers are noted
     */
    Practice(
            PracticeSources.Chosen chosen,
            Supplier<Knowledge> knowledge,
            Executor executor,
            int threads,
            PracticeLog log) {
        this.chosen = chosen;
        this.knowledge = knowledge;
        this.executor = executor;
        this.threads = threads;
        this.log = log;
    }

    /** What it is about. */
    String title() {
        return chosen.title();
    }

    /** As things stand; an exercise that is ready is asked. */
    synchronized Standing standing() {
        if (shown == null) {
            shown = take();
            asked += shown == null ? 0 : 1;
        }
        boolean over = shown == null && exhausted;
        return new Standing(
                Optional.ofNullable(shown), Optional.ofNullable(answered), asked, right, wrong, again.size(), over);
    }

    private Asked take() {
        if (!again.isEmpty() && again.peek().from() <= asked) {
            return again.remove().asked();
        }
        Optional<Optional<Asked>> found = exhausted ? Optional.of(Optional.empty()) : look();
        if (found.isEmpty()) {
            return null;
        }
        next = null;
        if (found.get().isPresent()) {
            return found.get().get();
        }
        exhausted = true;
        return again.isEmpty() ? null : again.remove().asked();
    }

    /** The next one; empty while it is looked for, empty inside if there are no more. */
    private Optional<Optional<Asked>> look() {
        if (next == null || next.gone()) {
            next = new Thought<>(executor, Thought.PATIENCE, this::find);
        }
        return next.within(AT_ONCE);
    }

    /** Goes on looking for the next one; tells whether it is there. */
    synchronized boolean ahead() {
        return exhausted || look().isPresent();
    }

    private Optional<Asked> find(BooleanSupplier unwanted) {
        synchronized (chosen) {
            Knowledge known = knowledge.get();
            return chosen.supply()
                    .next(known, threads, unwanted)
                    .map(exercise -> new Asked(exercise, reasons(known, exercise), 0));
        }
    }

    private Reasons reasons(Knowledge known, Exercise exercise) {
        try (Judge judge = new Judge(known, threads)) {
            return new Reasoning(judge, Supply.LOOKAHEAD, true, known.terms()).of(exercise, chosen.about());
        }
    }

    /** Answers what is asked; fails with a {@link RefusedException} if that is no answer, or it cannot be noted. */
    synchronized void answer(String text) {
        if (shown == null || answered != null) {
            return;
        }
        Answered given = shown.exercise() instanceof PlayExercise
                ? played((PlayExercise) shown.exercise(), text)
                : decided((CubeExercise) shown.exercise(), text);
        try {
            log.add(shown.exercise(), given.words(), given.right(), given.cost());
        } catch (IOException e) {
            throw new RefusedException("the answer cannot be noted in '" + log.file() + "': " + Reason.of(e));
        }
        answered = given;
        right += given.right() ? 1 : 0;
        wrong += given.right() ? 0 : 1;
        if (!given.right()) {
            again.add(new Due(new Asked(shown.exercise(), shown.reasons(), shown.before() + 1), asked + OTHERS));
        }
    }

    private static Answered played(PlayExercise exercise, String text) {
        try {
            Play play = PlayText.parse(text == null ? "" : text, exercise.position(), exercise.roll());
            PlayVerdict verdict = exercise.ranking().stream()
                    .filter(each -> each.play().result().equals(play.result()))
                    .findFirst()
                    .orElseThrow(() -> new RefusedException("that is not a legal play"));
            return answered(verdict.play().toString(), verdict.points(), GivenAway.by(exercise, verdict));
        } catch (IllegalPlayException e) {
            throw new RefusedException(e.getMessage());
        }
    }

    private static Answered decided(CubeExercise exercise, String text) {
        return exercise.choices().stream()
                .filter(action -> DrillWords.choice(exercise, action).equals(text))
                .findFirst()
                .map(action -> answered(text, exercise.cost(action), GivenAway.by(exercise, action)))
                .orElseThrow(() -> new RefusedException("choose one of the buttons"));
    }

    private static Answered answered(String words, double cost, String given) {
        return new Answered(words, Grade.ofCost(cost) == Grade.FINE, cost, given);
    }

    /** Goes on to the next one. */
    synchronized void next() {
        if (answered != null) {
            shown = null;
            answered = null;
        }
    }
}
