package org.pipwright.engine.drill;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.evaluation.StoppableEvaluator;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.parallel.Crew;

/**
 * Finds exercises: plays numbered games, at most one question from each, and takes the questions in the order of the games
 * unless they are nearly equal to one taken before. At most half have the same answer where it could be guessed otherwise:
 * the cube action, or whether to hit. So what is found depends on the settings and the players alone, not on the number
 * of threads.
 */
public final class Drill {
    /** Games that are looked through before the questions in them are taken. */
    private static final int BLOCK = 16;

    private final DrillSettings settings;
    private final Knowledge knowledge;
    private final Weaker weaker;
    private final DrillListener listener;

    /** One position may take long at the largest lookahead. */
    private final Progress progress;

    /**
     * A search about to begin.
     *
     * @param settings what decides which exercises are found
     * @param knowledge what right answers are found with
     * @param weaker whose mistakes are looked for
     * @param listener told of the progress, and asked whether to stop
     */
    public Drill(DrillSettings settings, Knowledge knowledge, Weaker weaker, DrillListener listener) {
        this.settings = settings;
        this.knowledge = knowledge;
        this.weaker = weaker;
        this.listener = listener;
        progress = Progress.until(listener::stopped);
    }

    /**
     * Searches until there are enough.
     *
     * @param threads number of threads, at least 1
     * @return the exercises; fewer than wanted if most games held no more, or after a stop
     */
    public List<Exercise> run(int threads) {
        try (Crew<GameMoments> crew = new Crew<>(threads, this::worker)) {
            try {
                return run(crew);
            } finally {
                crew.workers().forEach(GameMoments::close);
            }
        }
    }

    private List<Exercise> run(Crew<GameMoments> crew) {
        List<Exercise> taken = new ArrayList<>();
        try {
            for (int from = 0; from < settings.mostGames(); from += BLOCK) {
                int size = Math.min(BLOCK, settings.mostGames() - from);
                List<Optional<Exercise>> found = block(crew, from, size);
                for (Optional<Exercise> each : found) {
                    each.filter(question -> isNew(question, taken)).ifPresent(taken::add);
                    if (taken.size() == settings.count()) {
                        return taken;
                    }
                }
                listener.reached(taken.size(), from + size);
            }
        } catch (CancellationException e) {
            // What was taken from the blocks before stands: the beginning of the full list.
            return taken;
        }
        return taken;
    }

    private GameMoments worker() {
        Judge judge = new Judge(knowledge, 1);
        Examiner examiner = settings.theme().cube()
                ? new CubeExaminer(
                        settings,
                        judge,
                        progress,
                        knowledge.terms(),
                        weaker.opinions().get())
                : new PlayExaminer(settings, judge, progress, weaker.players().get());
        PositionEvaluator evaluator = knowledge.judgement().evaluator();
        return new GameMoments(
                settings, new LoosePlayer(new StoppableEvaluator(evaluator, listener::stopped)), examiner, judge);
    }

    private static List<Optional<Exercise>> block(Crew<GameMoments> crew, int from, int size) {
        List<Optional<Exercise>> found = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            found.add(Optional.empty());
        }
        crew.run(size, (worker, i) -> found.set(i, worker.question(from + i)));
        return found;
    }

    private boolean isNew(Exercise question, List<Exercise> taken) {
        return Likeness.unlikeAll(question, taken, settings.apart()) && !isFrequent(question, taken);
    }

    private boolean isFrequent(Exercise question, List<Exercise> taken) {
        Optional<Object> answer = guess(question);
        long alike = taken.stream().filter(other -> guess(other).equals(answer)).count();
        return answer.isPresent() && alike >= (settings.count() + 1) / 2;
    }

    /** The part of the answer that a student could guess from other questions of the sheet, if there is one. */
    private Optional<Object> guess(Exercise question) {
        if (question instanceof CubeExercise) {
            return Optional.of(((CubeExercise) question).best());
        }
        PlayExercise play = (PlayExercise) question;
        return settings.theme() == Theme.HITTING
                ? Optional.of(Facts.hits(play.position(), play.best().play().result()) > 0)
                : Optional.empty();
    }
}
