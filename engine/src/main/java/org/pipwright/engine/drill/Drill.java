package org.pipwright.engine.drill;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.Supplier;
import org.pipwright.engine.evaluation.StoppableEvaluator;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.search.Judgement;

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
    private final Supplier<Judge> judges;
    private final Weaker weaker;
    private final DrillListener listener;
    private volatile boolean stopped;

    /**
     * A search about to begin.
     *
     * @param settings what decides which exercises are found
     * @param judges makes what one thread finds right answers with; all equal
     * @param weaker whose mistakes are looked for
     * @param listener told of the progress
     */
    public Drill(DrillSettings settings, Supplier<Judge> judges, Weaker weaker, DrillListener listener) {
        this.settings = settings;
        this.judges = judges;
        this.weaker = weaker;
        this.listener = listener;
    }

    /**
     * Searches until there are enough.
     *
     * @param threads number of threads, at least 1
     * @return the exercises; fewer than wanted if most games held no more, or after {@link #stop}
     */
    public List<Question> run(int threads) {
        List<Question> taken = new ArrayList<>();
        try (Crew<GameMoments> crew = new Crew<>(threads, this::worker)) {
            for (int from = 0; from < settings.mostGames(); from += BLOCK) {
                int size = Math.min(BLOCK, settings.mostGames() - from);
                List<Optional<Question>> found = block(crew, from, size);
                for (Optional<Question> each : found) {
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

    /** Ends the search soon, from any thread: {@link #run} returns what was found in whole blocks of games. */
    public void stop() {
        stopped = true;
    }

    /**
     * Whether it was told to end.
     *
     * @return true after {@link #stop}
     */
    public boolean stopped() {
        return stopped;
    }

    private GameMoments worker() {
        Judge judge = stoppable(judges.get());
        Examiner examiner = settings.theme().cube()
                ? new CubeExaminer(settings, judge, weaker.opinions().get())
                : new PlayExaminer(settings, judge, weaker.players().get());
        return new GameMoments(settings, new LoosePlayer(judge.second().evaluator()), examiner);
    }

    /** One position may take long at the largest lookahead. */
    private Judge stoppable(Judge judge) {
        return new Judge(stoppable(judge.judgement()), stoppable(judge.second()), judge.terms());
    }

    private Judgement stoppable(Judgement judgement) {
        return new Judgement(new StoppableEvaluator(judgement.evaluator(), () -> stopped), judgement.horizon());
    }

    private static List<Optional<Question>> block(Crew<GameMoments> crew, int from, int size) {
        List<Optional<Question>> found = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            found.add(Optional.empty());
        }
        crew.run(size, (worker, i) -> found.set(i, worker.question(from + i)));
        return found;
    }

    private boolean isNew(Question question, List<Question> taken) {
        return taken.stream()
                        .allMatch(other ->
                                Likeness.checkersApart(other.position(), question.position()) >= settings.apart())
                && !isFrequent(question, taken);
    }

    private boolean isFrequent(Question question, List<Question> taken) {
        Optional<Object> answer = guess(question);
        long alike = taken.stream().filter(other -> guess(other).equals(answer)).count();
        return answer.isPresent() && alike >= (settings.count() + 1) / 2;
    }

    /** The part of the answer that a student could guess from other questions of the sheet, if there is one. */
    private Optional<Object> guess(Question question) {
        if (question instanceof CubeQuestion) {
            return Optional.of(((CubeQuestion) question).best());
        }
        PlayQuestion play = (PlayQuestion) question;
        return settings.theme() == Theme.HITTING
                ? Optional.of(Facts.hits(play.position(), play.best().play().result()) > 0)
                : Optional.empty();
    }
}
