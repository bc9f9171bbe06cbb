package org.pipwright.engine.search;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.FinishedGames;
import org.pipwright.engine.evaluation.Horizon;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.evaluation.Sieve;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/**
 * Positions with lookahead n: the mean, over the 21 rolls by their probability, of what the best reply leaves, each reply
 * valued with lookahead n - 1; lookahead 0 is the evaluator itself. Best is what the column of worth says: points without
 * the cube for the six chances, and for a cube what the opponent's best cube action then leaves. All columns share the
 * network's calls, the memory and the threads, and each prunes for itself. Replies to replies, of which there are by far the
 * most, are kept narrower by a quick net ({@link Sieve#ofLaterReplies}). Serves one thread.
 *
 * <p>What is found with lookahead 1 and more depends on the position, the column and the settings alone, bit for bit: the
 * replies of a position are always valued from that position as their common parent. So a cache, or more threads, or other
 * columns beside, change nothing.
 */
public final class Lookahead {
    private final PositionEvaluator evaluator;
    private final Sieve plays;
    private final Sieve ofReplies;
    private final Sieve ofLaterReplies;
    private final Horizon horizon;
    private final LookaheadSettings settings;
    private final ChanceCache cache;
    private final BooleanSupplier stopped;
    private final ColumnSet columnSet;
    private final Replies root = new Replies();
    private final Replies[] levels = new Replies[LookaheadSettings.MAX + 1];
    private final Batch[] children = new Batch[LookaheadSettings.MAX + 1];
    private final Probe probe;
    private long evaluations;

    /**
     * A search of its own.
     *
     * @param judgement what it judges positions with; used by this search only
     * @param settings how candidates are pruned
     */
    public Lookahead(Judgement judgement, LookaheadSettings settings) {
        this(judgement, settings, new ChanceCache(14), () -> false);
    }

    /**
     * A search that shares its memory with others.
     *
     * @param judgement what it judges positions with; used by this search only
     * @param settings how candidates are pruned
     * @param cache shared with searches by an equal judgement and equal settings only
     * @param stopped asked now and then; once true, whatever runs ends with a {@link CancellationException}
     */
    public Lookahead(Judgement judgement, LookaheadSettings settings, ChanceCache cache, BooleanSupplier stopped) {
        this.evaluator = judgement.evaluator();
        plays = Sieve.ofPlays(evaluator);
        ofReplies = Sieve.ofReplies(evaluator);
        ofLaterReplies = Sieve.ofLaterReplies(evaluator);
        this.horizon = judgement.horizon();
        this.settings = settings;
        this.cache = cache;
        this.stopped = stopped;
        this.columnSet = new ColumnSet(cache);
        this.probe = new Probe(this, LookaheadSettings.at(settings.inner(), 0));
    }

    /** The columns of some cubes; terms for equal stakes have to be equal. */
    Columns columns(CubeTerms terms, List<CubeState> cubes) {
        return columnSet.of(terms, cubes);
    }

    /**
     * The chances of an unfinished position before the roll.
     *
     * @param planes array that holds the position
     * @param at index of its first plane
     * @param lookahead 0 to {@value LookaheadSettings#MAX}
     * @param out where to write
     * @param outAt index of the first of six chances, for the side on roll
     */
    public void evaluate(int[] planes, int at, int lookahead, float[] out, int outAt) {
        LookaheadSettings.requireLookahead(lookahead);
        if (lookahead == 0) {
            evaluator.evaluate(planes, at, out, outAt);
            evaluations++;
            return;
        }
        Batch batch = Batch.of(planes, at, 0);
        average(batch, 0, lookahead, Columns.NONE);
        System.arraycopy(batch.chances, 0, out, outAt, Outcomes.COUNT);
    }

    /**
     * Chooses among the results of a roll, pruned by the root settings. With lookahead 2, plays are left as soon as
     * they cannot be the best ({@link Probe}), which changes nothing else.
     *
     * @param planes array that holds the position before the play, the mover's side first
     * @param at index of its first plane
     * @param results the results, as the play generator gives them
     * @param count number of results
     * @param lookahead 0 to {@value LookaheadSettings#MAX}
     * @param out where to write six chances of the chosen result, for the mover
     * @return index of the chosen result
     */
    public int choose(int[] planes, int at, int[] results, int count, int lookahead, float[] out) {
        LookaheadSettings.requireLookahead(lookahead);
        expandRoot(planes, at, results, count, lookahead, Columns.NONE);
        int best = lookahead == 2 ? probed() : deepened(lookahead, Columns.CUBELESS);
        System.arraycopy(root.chances(), best * Outcomes.COUNT, out, 0, Outcomes.COUNT);
        return best;
    }

    /** The same choice with every play valued in full. */
    int chooseUnpruned(int[] planes, int at, int[] results, int count, int lookahead, float[] out) {
        expandRoot(planes, at, results, count, lookahead, Columns.NONE);
        int best = deepened(lookahead, Columns.CUBELESS);
        System.arraycopy(root.chances(), best * Outcomes.COUNT, out, 0, Outcomes.COUNT);
        return best;
    }

    /**
     * Chooses among the results of a roll what leaves the most with the cube where it stands, pruned by the root settings.
     *
     * @param planes array that holds the position before the play, the mover's side first
     * @param at index of its first plane
     * @param results the results, as the play generator gives them
     * @param count number of results
     * @param lookahead 0 to {@value LookaheadSettings#MAX}
     * @param terms what is played for, seen from the mover
     * @param cube the cube, seen from the mover
     * @return index of the chosen result, the first of equals
     */
    public int choose(int[] planes, int at, int[] results, int count, int lookahead, CubeTerms terms, CubeState cube) {
        LookaheadSettings.requireLookahead(lookahead);
        Columns columns = columns(terms, List.of(cube));
        expandRoot(planes, at, results, count, lookahead, columns);
        return deepened(lookahead, 1 + columns.of(cube));
    }

    /** The best result of the root in a column, with lookahead. */
    private int deepened(int lookahead, int column) {
        deepen(root, 0, lookahead, settings.root(), 0, column, column + 1);
        return best(root, 0, lookahead, column);
    }

    /** {@link #deepen} of the root to lookahead 2, but plays are left as soon as they cannot be the best any more. */
    private int probed() {
        root.keepAll(0, Columns.CUBELESS);
        Shortlist running = root.running(Columns.CUBELESS);
        running.prune(LookaheadSettings.at(settings.root(), 0), root);
        if (running.size() > 1) {
            for (int k = 0; k < running.size(); k++) {
                value(root, running.get(k), 1, 0);
            }
            running.prune(LookaheadSettings.at(settings.root(), 1), root);
        }
        int best = running.get(0);
        value(root, best, 2, 0);
        for (int k = 1; k < running.size(); k++) {
            int reply = running.get(k);
            if (valueIfBetter(reply, root.worth(best, Columns.CUBELESS))) {
                best = root.better(reply, best, Columns.CUBELESS);
            }
        }
        return best;
    }

    /** Values a play of the root with lookahead 2, unless it turns out on the way that it is worth less than another. */
    private boolean valueIfBetter(int reply, double worth) {
        Batch child = child(0, Columns.NONE);
        Planes.copySwapped(root.results(), reply * Planes.STRIDE, child.planes, 0);
        if (!known(child, 0, 2, Columns.NONE)) {
            Replies replies = level(2);
            expand(child.planes, 0, 0, Roll.COUNT, Columns.NONE, replies);
            if (!probe.mean(replies, -worth, child)) {
                return false;
            }
            store(child, 0, 2, Columns.NONE);
        }
        take(root, reply, child, 0);
        return true;
    }

    /** Values the plays to choose from: those that may be best, or all where the settings go on to prune them. */
    private void expandRoot(int[] planes, int at, int[] results, int count, int lookahead, Columns columns) {
        root.take(planes, at, results, count, plays, columns, lookahead > 0);
        evaluations += root.judged();
    }

    /** Values all results of a roll without looking ahead. */
    void expand(int[] planes, int at, int[] results, int count, Replies into, Columns columns) {
        into.take(planes, at, results, count, plays, columns, true);
        evaluations += count;
    }

    /**
     * Number of positions valued by the evaluator so far.
     *
     * @return at least 0
     */
    public long evaluations() {
        return evaluations;
    }

    /** Values position k of a batch, which is asked about, with a lookahead of at least 1. */
    void average(Batch batch, int k, int lookahead, Columns columns) {
        average(batch, k, lookahead, columns, false);
    }

    private void average(Batch batch, int k, int lookahead, Columns columns, boolean later) {
        if (!known(batch, k, lookahead, columns, later)) {
            search(batch, k, lookahead, columns, later);
        }
    }

    private void goOn() {
        if (stopped.getAsBoolean()) {
            throw new CancellationException("the search was stopped");
        }
    }

    /** Finds the best reply to each roll, and remembers their mean. */
    private Replies search(Batch batch, int k, int lookahead, Columns columns, boolean later) {
        Replies replies = level(lookahead);
        expand(batch.planes, k * Planes.STRIDE, 0, Roll.COUNT, columns, replies, later);
        RollMean mean = new RollMean(columns.cubes());
        for (int roll = 0; roll < Roll.COUNT; roll++) {
            deepen(replies, roll, lookahead - 1, settings.inner(), lookahead, 0, columns.width());
            add(replies, roll, lookahead - 1, mean);
        }
        mean.write(batch, k);
        store(batch, k, lookahead, columns, later);
        return replies;
    }

    /**
     * The luck of a roll, as {@link RollLuck} has it, in one of some columns: each roll is played for the most there. What
     * lookahead 1 finds of the position on the way is remembered, with the cube and without.
     */
    double luck(int[] planes, Roll roll, boolean opening, Columns columns, int column) {
        Batch batch = Batch.of(planes, 0, columns.cubes());
        Replies replies = search(batch, 0, 1, columns, false);
        Batch cubeless = Batch.of(planes, 0, 0);
        System.arraycopy(batch.chances, 0, cubeless.chances, 0, Outcomes.COUNT);
        store(cubeless, 0, 1, Columns.NONE);
        double sum = 0;
        double rolled = 0;
        int throwsInAll = 0;
        for (Roll other : opening ? Roll.opening() : Roll.all()) {
            double value = replies.worth(replies.best(other.index(), column), column);
            throwsInAll += other.ways();
            sum += other.ways() * value;
            rolled = other.equals(roll) ? value : rolled;
        }
        return rolled - sum / throwsInAll;
    }

    /** Adds the best reply to a roll in each column to a mean. */
    private void add(Replies replies, int roll, int lookahead, RollMean mean) {
        mean.add(roll, replies.chances(), best(replies, roll, lookahead, Columns.CUBELESS) * Outcomes.COUNT);
        for (int cube = 0; cube < replies.columns().cubes(); cube++) {
            int best = best(replies, roll, lookahead, 1 + cube);
            mean.add(roll, cube, replies.worth(best, 1 + cube));
        }
    }

    /** Keeps a mean. Where the chances are known without it, though not what a cube makes of them, these go first. */
    void store(Batch batch, int k, int lookahead, Columns columns) {
        store(batch, k, lookahead, columns, false);
    }

    private void store(Batch batch, int k, int lookahead, Columns columns, boolean later) {
        if (columns.cubes() > 0) {
            horizon.write(batch.planes, k * Planes.STRIDE, batch.chances, k * Outcomes.COUNT);
        }
        cache.store(batch, k, lookahead, key(columns, later));
    }

    /**
     * Writes what needs no search: finished games, what the horizon knows, what was searched before. Where the values with
     * the cube are known exactly they are not written, but left to whoever asks for them.
     */
    boolean known(Batch batch, int k, int lookahead, Columns columns) {
        return known(batch, k, lookahead, columns, false);
    }

    private boolean known(Batch batch, int k, int lookahead, Columns columns, boolean later) {
        int at = k * Planes.STRIDE;
        int outAt = k * Outcomes.COUNT;
        return FinishedGames.write(batch.planes, at, batch.chances, outAt)
                || (columns.cubes() == 0 || columns.known(batch.planes, at))
                        && horizon.write(batch.planes, at, batch.chances, outAt)
                || cache.find(batch, k, lookahead, key(columns, later));
    }

    /** What is found of a position depends on how wide its replies were kept, so it is remembered under two keys. */
    private static int key(Columns columns, boolean later) {
        return 2 * columns.id() + (later ? 1 : 0);
    }

    /** Finds the replies to rolls first to end - 1, and values what may be best without lookahead. */
    void expand(int[] planes, int at, int first, int end, Columns columns, Replies into) {
        expand(planes, at, first, end, columns, into, false);
    }

    private void expand(int[] planes, int at, int first, int end, Columns columns, Replies into, boolean later) {
        goOn();
        into.expand(planes, at, first, end, later ? ofLaterReplies : ofReplies, columns);
        evaluations += into.judged();
    }

    /**
     * Finds the best reply to one roll in each column, of those that have been expanded and stay as they are: one term of the
     * mean of {@link #average}.
     */
    Replies reply(Replies expanded, int roll, int lookahead, Columns columns) {
        if (lookahead == 0) {
            return expanded;
        }
        Replies replies = level(lookahead + 1);
        replies.takeRoll(expanded, roll, columns);
        deepen(replies, roll, lookahead, settings.inner(), lookahead + 1, 0, columns.width());
        return replies;
    }

    /** The chances after the best reply to each roll that hits nothing, without lookahead; null where every reply hits. */
    Outcomes[] quietReplies(int[] planes, int at, List<Roll> rolls) {
        goOn();
        Replies replies = level(1);
        int[] kept = replies.expandQuiet(planes, at, rolls, ofReplies);
        evaluations += replies.judged();
        Outcomes[] quiet = new Outcomes[kept.length];
        for (int i = 0; i < kept.length; i++) {
            quiet[i] = kept[i] < 0
                    ? null
                    : Outcomes.of(replies.chances(), replies.best(kept[i], Columns.CUBELESS) * Outcomes.COUNT);
        }
        return quiet;
    }

    /** The best reply to a roll that has been deepened. */
    int best(Replies replies, int roll, int lookahead, int column) {
        return lookahead == 0
                ? replies.best(roll, column)
                : replies.running(column).best(replies);
    }

    /**
     * Values the replies to a roll step by step up to a lookahead, in each of some columns fewer each time. A column in
     * which one reply is left needs no more steps but the last.
     */
    private void deepen(
            Replies replies, int roll, int lookahead, List<Pruning> prunings, int level, int first, int end) {
        for (int column = first; column < end && lookahead > 0; column++) {
            replies.keepAll(roll, column);
        }
        for (int reached = 0; reached < lookahead; reached++) {
            boolean settled = true;
            for (int column = first; column < end; column++) {
                Shortlist running = replies.running(column);
                running.prune(LookaheadSettings.at(prunings, reached), replies);
                settled &= running.size() == 1;
            }
            reached = settled ? lookahead - 1 : reached;
            int pending = replies.gather(first, end, reached + 1 == lookahead);
            for (int k = 0; k < pending; k++) {
                value(replies, replies.pending(k), reached + 1, level);
            }
        }
    }

    /** Values a reply with a lookahead of at least 1, for the side that plays it. */
    void value(Replies replies, int reply, int lookahead, int level) {
        Columns columns = replies.columns();
        Batch child = child(level, columns.next());
        Planes.copySwapped(replies.results(), reply * Planes.STRIDE, child.planes, 0);
        average(child, 0, lookahead, columns.next(), level > 0);
        take(replies, reply, child, 0);
    }

    /** Takes over what has been found of the position after a reply, which is position k of a batch. */
    static void take(Replies replies, int reply, Batch batch, int k) {
        int at = reply * Outcomes.COUNT;
        System.arraycopy(batch.chances, k * Outcomes.COUNT, replies.chances(), at, Outcomes.COUNT);
        Chances.swap(replies.chances(), at);
        replies.changed(reply);
        if (batch.cubes > 0) {
            replies.columns()
                    .fold(batch, k, replies.worth(), reply * replies.columns().width());
        }
    }

    /** The replies of a position that is valued with so much lookahead. */
    private Replies level(int lookahead) {
        if (levels[lookahead] == null) {
            levels[lookahead] = new Replies();
        }
        return levels[lookahead];
    }

    /** Room for the position after a reply, one at each level. */
    private Batch child(int level, Columns columns) {
        Batch child = children[level];
        if (child == null || child.cubes != columns.cubes()) {
            child = new Batch(1, columns.cubes());
            children[level] = child;
        }
        return child;
    }
}
