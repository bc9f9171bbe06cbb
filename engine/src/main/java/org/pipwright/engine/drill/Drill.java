package org.pipwright.engine.drill;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.stream.LongStream;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.duel.PortableEntrant;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.parallel.Workforce;

/**
 * Finds exercises: plays numbered games, at most one question from each, and takes the questions in the order of the games
 * unless they are nearly equal to one taken before. At most half have the same answer where it could be guessed otherwise:
 * the cube action, or whether to hit; at most a third of a sheet, but three, teach the same. So what is found depends on the
 * settings and the players alone, not on the number of threads.
 */
public final class Drill {
    /** Games between two reports of progress. */
    private static final int BLOCK = 16;

    /** So many exercises of even a short sheet may teach the same. */
    private static final int ALIKE = 3;

    private final DrillSettings settings;
    private final Knowledge knowledge;
    private final Entrant weaker;
    private final DrillListener listener;
    private volatile boolean enough;

    /**
     * A search about to begin.
     *
     * @param settings what decides which exercises are found
     * @param knowledge what right answers are found with
     * @param weaker whose mistakes are looked for: a net, or one of the players that never change, which judges the cube
     *     by the pip counts
     * @param listener told of the progress, and asked whether to stop
     */
    public Drill(DrillSettings settings, Knowledge knowledge, Entrant weaker, DrillListener listener) {
        this.settings = settings;
        this.knowledge = knowledge;
        this.weaker = weaker;
        this.listener = listener;
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
                return run(taking -> ofCrew(crew, taking));
            } finally {
                crew.workers().forEach(GameMoments::close);
            }
        }
    }

    /**
     * Searches by other machines.
     *
     * @param workforce the machines, closed by who opened them
     * @return what {@link #run(int)} finds
     * @throws IllegalStateException if what values positions is no net
     */
    public List<Exercise> run(Workforce workforce) {
        DrillTrade trade =
                new DrillTrade(settings, workforce.share(knowledge.portable()), PortableEntrant.of(weaker, workforce));
        return run(taking -> workforce.inOrder(
                trade, LongStream.range(0, settings.mostGames()).iterator(), taking, listener::stopped));
    }

    private List<Exercise> run(Consumer<Predicate<Found>> games) {
        Taking taking = new Taking();
        try {
            games.accept(taking);
        } catch (CancellationException e) {
            // What was taken before stands: the beginning of the full list.
        }
        return taking.taken;
    }

    /** Takes what comes of each game in order; null if that is nothing. */
    private final class Taking implements Predicate<Found> {
        private final List<Exercise> taken = new ArrayList<>();
        private final Map<String, Integer> lessons = new HashMap<>();
        private int games;

        @Override
        public boolean test(Found found) {
            if (found != null && isNew(found.exercise(), taken) && isTaughtSeldom(found.lesson())) {
                taken.add(found.exercise());
                lessons.merge(String.valueOf(found.lesson()), 1, Integer::sum);
            }
            if (taken.size() == settings.count()) {
                return false;
            }
            if (++games % BLOCK == 0 || games == settings.mostGames()) {
                listener.reached(taken.size(), games);
            }
            return true;
        }

        private boolean isTaughtSeldom(String lesson) {
            return lesson == null || lessons.getOrDefault(lesson, 0) < Math.max(ALIKE, (settings.count() + 2) / 3);
        }
    }

    private GameMoments worker() {
        return GameMoments.of(settings, knowledge, weaker, () -> enough || listener.stopped());
    }

    /** No thread waits for another's game; those that come after the last one needed are broken off. */
    private void ofCrew(Crew<GameMoments> crew, Predicate<Found> taken) {
        enough = false;
        Map<Integer, Optional<Found>> found = new HashMap<>();
        int[] next = {0};
        crew.run(settings.mostGames(), (worker, game) -> {
            if (enough) {
                return;
            }
            Optional<Found> question = worker.question(game);
            synchronized (found) {
                found.put(game, question);
                while (!enough && found.containsKey(next[0])) {
                    enough = !taken.test(found.remove(next[0]++).orElse(null));
                }
            }
        });
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
