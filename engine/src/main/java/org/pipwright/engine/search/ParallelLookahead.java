package org.pipwright.engine.search;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.function.IntConsumer;
import java.util.function.Supplier;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * Lookahead by several threads that share a cache. The results are those of {@link Lookahead}, bit for bit, whatever the
 * number of threads. To be asked from one thread at a time.
 */
public final class ParallelLookahead implements AutoCloseable {
    /** Base-2 logarithm of the cache's entries: about 13 MB when full, more with cubes. */
    private static final int CACHE_BITS = 17;

    private final LookaheadSettings settings;
    private final ChanceCache cache;
    private final Crew<SearchWorker> crew;
    private final Replies replies = new Replies();
    private final RollByRoll rollByRoll;
    private volatile long deadline;
    private volatile boolean timed;

    /**
     * A search without the cube.
     *
     * @param judgements makes what one thread judges with; all equal
     * @param settings how candidates are pruned
     * @param threads number of threads, at least 1
     */
    public ParallelLookahead(Supplier<Judgement> judgements, LookaheadSettings settings, int threads) {
        this(
                judgements,
                () -> stakes -> {
                    throw new IllegalStateException("a search without terms knows no cube");
                },
                settings,
                threads,
                memory(),
                () -> false);
    }

    /**
     * A search with and without the cube.
     *
     * @param judgements makes what one thread judges with; all equal
     * @param terms makes what gives one thread its terms for given stakes, seen from the side on roll; all equal
     * @param settings how candidates are pruned
     * @param threads number of threads, at least 1
     * @param cache shared with searches by equal judgements, terms and settings only
     * @param stopped asked now and then; once true, whatever runs ends with a {@link CancellationException}
     */
    public ParallelLookahead(
            Supplier<Judgement> judgements,
            Supplier<? extends Function<Stakes, CubeTerms>> terms,
            LookaheadSettings settings,
            int threads,
            ChanceCache cache,
            BooleanSupplier stopped) {
        this.settings = settings;
        this.cache = cache;
        crew = new Crew<>(
                threads,
                () -> new SearchWorker(
                        new Lookahead(judgements.get(), settings, cache, () -> late() || stopped.getAsBoolean()),
                        terms.get()));
        rollByRoll = new RollByRoll(crew);
    }

    /**
     * A memory of the usual size.
     *
     * @return an empty one
     */
    public static ChanceCache memory() {
        return new ChanceCache(CACHE_BITS);
    }

    private boolean late() {
        return timed && System.nanoTime() - deadline > 0;
    }

    /** Takes steps until the time is up; one that is not finished by then counts for nothing. */
    private void untilLate(long end, IntConsumer step) {
        deadline = end;
        timed = true;
        try {
            for (int next = 1; next <= LookaheadSettings.MAX; next++) {
                step.accept(next);
            }
        } catch (CancellationException e) {
            if (!late()) {
                throw e;
            }
            // Time is up: the last finished step stands.
        }
    }

    /**
     * Values the results of a roll step by step, fewer each time as the root settings say.
     *
     * @param choice what is to be chosen from
     * @param lookahead number of future rolls to average over, 0 to {@value LookaheadSettings#MAX}
     * @return one entry a result, in the order given, each with the lookahead it was valued with
     */
    public List<Searched> search(Choice choice, int lookahead) {
        int[] reached = begin(choice, lookahead);
        for (int next = 1; next <= lookahead; next++) {
            Shortlist running = pruned(next);
            next = running.size() == 1 ? lookahead : next;
            step(next, reached, Cubes.of(choice));
        }
        return found(reached);
    }

    /**
     * Values the results of a roll with more and more lookahead until the time is up.
     *
     * @param choice what is to be chosen from
     * @param time how long to search
     * @return one entry a result, in the order given, each with the lookahead it was valued with
     */
    public List<Searched> search(Choice choice, Duration time) {
        long end = System.nanoTime() + time.toNanos();
        int[] reached = begin(choice, 0);
        untilLate(end, next -> {
            pruned(next);
            step(next, reached, Cubes.of(choice));
        });
        return found(reached);
    }

    /**
     * Values the results of a roll with the same lookahead each.
     *
     * @param choice what is to be chosen from
     * @param lookahead number of future rolls to average over, 0 to {@value LookaheadSettings#MAX}
     * @return one entry a result, in the order given
     */
    public List<Searched> searchAll(Choice choice, int lookahead) {
        int[] reached = begin(choice, lookahead);
        if (lookahead > 0) {
            step(lookahead, reached, Cubes.of(choice));
        }
        return found(reached);
    }

    /**
     * The chances of an unfinished position before the roll.
     *
     * @param planes the position
     * @param lookahead number of future rolls to average over, 0 to {@value LookaheadSettings#MAX}
     * @return chances of the side on roll
     */
    public Outcomes evaluate(int[] planes, int lookahead) {
        LookaheadSettings.requireLookahead(lookahead);
        timed = false;
        return chances(planes, lookahead);
    }

    private Outcomes chances(int[] planes, int lookahead) {
        if (lookahead > 0) {
            return Outcomes.of(value(planes, Cubes.NONE, lookahead).chances, 0);
        }
        float[] chances = new float[Outcomes.COUNT];
        crew.workers().get(0).search().evaluate(planes, 0, 0, chances, 0);
        return Outcomes.of(chances, 0);
    }

    /**
     * The chances of an unfinished position before the roll, with more and more lookahead until the time is up.
     *
     * @param planes the position
     * @param time how long to search
     * @return result 0: chances of the side on roll, with the lookahead that was reached
     */
    public Searched evaluate(int[] planes, Duration time) {
        long end = System.nanoTime() + time.toNanos();
        Searched[] reached = {new Searched(0, evaluate(planes, 0), 0)};
        untilLate(
                end,
                next -> reached[0] = new Searched(0, Outcomes.of(value(planes, Cubes.NONE, next).chances, 0), next));
        return reached[0];
    }

    /**
     * The chances of an unfinished position before the roll, and the values of its cube actions.
     *
     * @param position the position
     * @param cube the cube, seen from the side on roll
     * @param terms what is played for, seen from the side on roll; equal to what the search makes for its stakes
     * @param lookahead number of future rolls to average over, 0 to {@value LookaheadSettings#MAX}
     * @return chances as {@link #evaluate(int[], int)} gives them; values exact where they are known
     */
    public CubeValued evaluate(Position position, CubeState cube, CubeTerms terms, int lookahead) {
        LookaheadSettings.requireLookahead(lookahead);
        timed = false;
        return valued(position, cube, terms, lookahead);
    }

    /**
     * The same with more and more lookahead until the time is up.
     *
     * @param position an unfinished position before the roll
     * @param cube the cube, seen from the side on roll
     * @param terms what is played for, seen from the side on roll; equal to what the search makes for its stakes
     * @param time how long to search
     * @return chances and values, with the lookahead that was reached
     */
    public CubeValued evaluate(Position position, CubeState cube, CubeTerms terms, Duration time) {
        long end = System.nanoTime() + time.toNanos();
        CubeValued[] reached = {evaluate(position, cube, terms, 0)};
        untilLate(end, next -> reached[0] = valued(position, cube, terms, next));
        return reached[0];
    }

    private CubeValued valued(Position position, CubeState cube, CubeTerms terms, int lookahead) {
        int[] planes = position.toPlanes();
        Optional<CubeValues> exact = terms.exact(position, cube);
        if (exact.isPresent() || lookahead == 0) {
            Outcomes outcomes = chances(planes, lookahead);
            CubeValues values = exact.orElseGet(() -> CubeSearch.byModel(position, outcomes, cube, terms));
            return new CubeValued(outcomes, values, lookahead);
        }
        Cubes asked = Cubes.toRollWith(terms.stakes(), cube);
        Batch batch = value(planes, asked, lookahead);
        Columns columns = crew.workers().get(0).columns(asked);
        return new CubeValued(
                Outcomes.of(batch.chances, 0),
                terms.values(cube, state -> batch.rolling[columns.of(state)]),
                lookahead);
    }

    private Batch value(int[] planes, Cubes cubes, int lookahead) {
        rollByRoll.forget();
        int width = crew.workers().get(0).columns(cubes).cubes();
        Batch batch = Batch.of(planes, 0, width);
        rollByRoll.value(batch, 1, lookahead, worker -> worker.columns(cubes));
        return batch;
    }

    /**
     * The best reply to each of the 21 rolls. Their mean is what {@link #evaluate(int[], int)} gives for one roll more.
     *
     * @param position an unfinished position
     * @param lookahead of each reply, 0 to {@value LookaheadSettings#MAX} - 1
     * @return 21 replies, in the order of {@link Roll#all()}
     */
    public List<RollReply> replies(Position position, int lookahead) {
        LookaheadSettings.requireLookahead(lookahead + 1);
        timed = false;
        return rollByRoll.replies(position, lookahead);
    }

    /**
     * The chances after the best reply that hits nothing, without lookahead, for each of some rolls.
     *
     * @param position an unfinished position
     * @param rolls the rolls
     * @return for each roll the six chances of the side that replies; empty if every reply hits
     */
    public List<Optional<Outcomes>> quietReplies(Position position, List<Roll> rolls) {
        timed = false;
        return rollByRoll.quietReplies(position, rolls);
    }

    /**
     * The luck of a roll where the best reply is the one that leaves the most with the cube where it stands.
     *
     * @param position an unfinished position
     * @param roll the roll
     * @param opening whether it was the first roll of a game, which is never a double
     * @param stakes what is played for, seen from the side on roll
     * @param cube the cube with which the roll was thrown, seen from the side on roll
     * @return what the best reply to this roll leaves, without lookahead, less the mean over all rolls there could have been;
     *     points per game, with a cube points per unit of it, or the chance to win the match
     */
    public double luck(Position position, Roll roll, boolean opening, Stakes stakes, CubeState cube) {
        timed = false;
        SearchWorker first = crew.workers().get(0);
        Columns columns = first.columns(Cubes.toRollWith(stakes, cube));
        int column = columns.cubes() == 0 ? Columns.CUBELESS : 1 + columns.of(cube);
        return first.search().luck(position.toPlanes(), roll, opening, columns, column);
    }

    private int[] begin(Choice choice, int lookahead) {
        LookaheadSettings.requireLookahead(lookahead);
        timed = false;
        rollByRoll.forget();
        SearchWorker first = crew.workers().get(0);
        Columns columns = first.columns(Cubes.of(choice));
        columns.expect(choice.results(), choice.count());
        first.search().expand(choice.planes(), 0, choice.results(), choice.count(), replies, columns);
        replies.keepAll(0, deciding());
        return new int[choice.count()];
    }

    /** The column that decides among the plays of the roll: that of the cube, or else cubeless points. */
    private int deciding() {
        return replies.columns().width() - 1;
    }

    private Shortlist pruned(int lookahead) {
        Shortlist running = replies.running(deciding());
        running.prune(LookaheadSettings.at(settings.root(), lookahead - 1), replies);
        return running;
    }

    /** Values the kept replies with a lookahead of at least 1. */
    private void step(int lookahead, int[] reached, Cubes cubes) {
        Columns columns = replies.columns();
        Shortlist running = replies.running(deciding());
        int size = running.size();
        Batch batch = new Batch(size, columns.next().cubes());
        for (int k = 0; k < size; k++) {
            Planes.copySwapped(replies.results(), running.get(k) * Planes.STRIDE, batch.planes, k * Planes.STRIDE);
        }
        rollByRoll.value(batch, size, lookahead, worker -> worker.columns(cubes).next());
        for (int k = 0; k < size; k++) {
            Lookahead.take(replies, running.get(k), batch, k);
            reached[running.get(k)] = lookahead;
        }
    }

    private List<Searched> found(int[] reached) {
        List<Searched> found = new ArrayList<>(reached.length);
        for (int i = 0; i < reached.length; i++) {
            Outcomes outcomes = Outcomes.of(replies.chances(), i * Outcomes.COUNT);
            found.add(
                    deciding() == Columns.CUBELESS
                            ? new Searched(i, outcomes, reached[i])
                            : new Searched(i, outcomes, reached[i], replies.worth(i, deciding())));
        }
        return found;
    }

    /**
     * Number of positions valued by the evaluators so far.
     *
     * @return at least 0
     */
    public long evaluations() {
        return crew.workers().stream()
                .mapToLong(worker -> worker.search().evaluations())
                .sum();
    }

    /**
     * Share of look-ups in the cache that found their position.
     *
     * @return 0 to 1
     */
    public double hitRate() {
        return cache.hitRate();
    }

    /** Lets the threads go. */
    @Override
    public void close() {
        crew.close();
    }
}
