package org.pipwright.engine.drill;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
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
        Taking taking = new Taking();
        try (Crew<GameMoments> crew = new Crew<>(threads, () -> worker(taking))) {
            try {
                return run(taking, () -> ofCrew(crew, taking));
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
        Taking taking = new Taking();
        return run(
                taking,
                () -> workforce.inOrder(
                        trade, LongStream.range(0, settings.mostGames()).iterator(), taking, listener::stopped));
    }

    private static List<Exercise> run(Taking taking, Runnable games) {
        try {
            games.run();
        } catch (CancellationException e) {
            // What was taken before stands: the beginning of the full list.
        }
        return taking.taken;
    }

    /** Takes what comes of each game in order; null if that is nothing. Any thread may ask what is wanted. */
    private final class Taking implements Predicate<Found> {
        private final List<Exercise> taken = new ArrayList<>();
        private final Map<Object, Integer> answers = new HashMap<>();
        private final Map<Object, Integer> lessons = new HashMap<>();
        private int games;

        @Override
        public synchronized boolean test(Found found) {
            if (found != null
                    && Likeness.unlikeAll(found.exercise(), taken, settings.apart())
                    && found.kinds().stream().allMatch(this::wants)) {
                taken.add(found.exercise());
                answers.merge(found.kind().answer(), 1, Integer::sum);
                lessons.merge(found.kind().lesson(), 1, Integer::sum);
            }
            if (taken.size() == settings.count()) {
                return false;
            }
            if (++games % BLOCK == 0 || games == settings.mostGames()) {
                listener.reached(taken.size(), games);
            }
            return true;
        }

        /** Whether there are not yet enough exercises of a kind. */
        synchronized boolean wants(Kind kind) {
            return (kind.answer() == null || answers.getOrDefault(kind.answer(), 0) < (settings.count() + 1) / 2)
                    && (kind.lesson() == null
                            || lessons.getOrDefault(kind.lesson(), 0) < Math.max(ALIKE, (settings.count() + 2) / 3));
        }
    }

    private GameMoments worker(Taking taking) {
        return GameMoments.of(settings, knowledge, weaker, taking::wants, () -> enough || listener.stopped());
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
}
