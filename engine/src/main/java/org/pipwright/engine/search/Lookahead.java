package org.pipwright.engine.search;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.FinishedGames;
import org.pipwright.engine.evaluation.Horizon;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/**
 * The chances of positions with lookahead n: the mean, over the 21 rolls by their probability, of the chances after the
 * best reply, each reply valued with lookahead n - 1; lookahead 0 is the evaluator itself. Best is what the objective
 * says. Serves one thread.
 *
 * <p>The chances with lookahead 1 and more depend on the position and the settings alone, bit for bit: the replies of a
 * position are always valued from that position as their common parent. So a cache, or more threads, change nothing.
 */
public final class Lookahead {
    private final PositionEvaluator evaluator;
    private final Horizon horizon;
    private final LookaheadSettings settings;
    private final ChanceCache cache;
    private final BooleanSupplier stopped;
    private final Replies root = new Replies();
    private final Replies[] levels = new Replies[LookaheadSettings.MOST + 1];
    private final int[][] children = new int[LookaheadSettings.MOST + 1][Planes.STRIDE];
    private final Probe probe;
    private long evaluations;

    /**
     * A search of its own.
     *
     * @param judgement what it judges positions with; used by this search only
     * @param settings how to narrow plays down
     */
    public Lookahead(Judgement judgement, LookaheadSettings settings) {
        this(judgement, settings, new ChanceCache(14), () -> false);
    }

    /**
     * A search that shares its memory with others.
     *
     * @param judgement what it judges positions with; used by this search only
     * @param settings how to narrow plays down
     * @param cache shared with searches by an equal judgement and equal settings only
     * @param stopped asked now and then; once true, whatever runs ends with a {@link CancellationException}
     */
    public Lookahead(Judgement judgement, LookaheadSettings settings, ChanceCache cache, BooleanSupplier stopped) {
        this.evaluator = judgement.evaluator();
        this.horizon = judgement.horizon();
        this.settings = settings;
        this.cache = cache;
        this.stopped = stopped;
        this.probe = new Probe(this, LookaheadSettings.at(settings.inner(), 0));
        for (int n = 1; n < levels.length; n++) {
            levels[n] = new Replies();
        }
    }

    /**
     * The chances of an unfinished position before the roll.
     *
     * @param planes array that holds the position
     * @param at index of its first plane
     * @param lookahead 0 to {@value LookaheadSettings#MOST}
     * @param out where to write
     * @param outAt index of the first of six chances, for the side on roll
     */
    public void evaluate(int[] planes, int at, int lookahead, float[] out, int outAt) {
        LookaheadSettings.requireLookahead(lookahead);
        if (lookahead == 0) {
            evaluator.evaluate(planes, at, out, outAt);
            evaluations++;
        } else {
            average(planes, at, lookahead, out, outAt);
        }
    }

    /**
     * Chooses among the results of a roll, narrowed down by the root settings. With lookahead 2 and points without the cube
     * for the objective, plays are left as soon as they cannot be the best ({@link Probe}), which changes nothing else.
     *
     * @param planes array that holds the position before the play, the mover's side first
     * @param at index of its first plane
     * @param results the results, as the play generator gives them
     * @param count number of results
     * @param lookahead 0 to {@value LookaheadSettings#MOST}
     * @param out where to write six chances of the chosen result, for the mover
     * @return index of the chosen result
     */
    public int choose(int[] planes, int at, int[] results, int count, int lookahead, float[] out) {
        LookaheadSettings.requireLookahead(lookahead);
        expand(planes, at, results, count, root);
        boolean probing = lookahead == 2 && settings.objective() == Objective.CUBELESS;
        int best = probing ? probed() : deepen(root, 0, lookahead, settings.root(), children[0]);
        System.arraycopy(root.chances(), best * Outcomes.COUNT, out, 0, Outcomes.COUNT);
        return best;
    }

    /** The same choice with every play valued in full. */
    int chooseUnpruned(int[] planes, int at, int[] results, int count, int lookahead, float[] out) {
        expand(planes, at, results, count, root);
        int best = deepen(root, 0, lookahead, settings.root(), children[0]);
        System.arraycopy(root.chances(), best * Outcomes.COUNT, out, 0, Outcomes.COUNT);
        return best;
    }

    /** {@link #deepen} of the root to lookahead 2, but plays are left as soon as they cannot be the best any more. */
    private int probed() {
        root.keepAll(0);
        root.narrow(LookaheadSettings.at(settings.root(), 0), settings.objective());
        if (root.keptCount() > 1) {
            for (int k = 0; k < root.keptCount(); k++) {
                value(root, root.kept(k), 1, children[0]);
            }
            root.narrow(LookaheadSettings.at(settings.root(), 1), settings.objective());
        }
        int best = root.kept(0);
        value(root, best, 2, children[0]);
        for (int k = 1; k < root.keptCount(); k++) {
            int reply = root.kept(k);
            if (valueIfBetter(reply, root.worth(best, settings.objective()))) {
                best = root.better(reply, best, settings.objective());
            }
        }
        return best;
    }

    /** Values a play of the root with lookahead 2, unless it turns out on the way that it is worth less than another. */
    private boolean valueIfBetter(int reply, float worth) {
        int outAt = reply * Outcomes.COUNT;
        int[] child = children[0];
        Planes.copySwapped(root.results(), reply * Planes.STRIDE, child, 0);
        if (!known(child, 0, 2, root.chances(), outAt)) {
            Replies replies = levels[2];
            replies.expand(child, 0, 0, Roll.COUNT, evaluator);
            evaluations += replies.count();
            if (!probe.mean(replies, -worth, root.chances(), outAt)) {
                return false;
            }
            cache.store(child, 0, 2, root.chances(), outAt);
        }
        Chances.swap(root.chances(), outAt);
        return true;
    }

    /** Values the results of a roll without looking ahead. */
    void expand(int[] planes, int at, int[] results, int count, Replies into) {
        into.take(planes, at, results, count, evaluator);
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

    private void average(int[] planes, int at, int lookahead, float[] out, int outAt) {
        if (known(planes, at, lookahead, out, outAt)) {
            return;
        }
        if (stopped.getAsBoolean()) {
            throw new CancellationException("the search was stopped");
        }
        Replies replies = levels[lookahead];
        replies.expand(planes, at, 0, Roll.COUNT, evaluator);
        evaluations += replies.count();
        RollMean mean = new RollMean();
        for (int roll = 0; roll < Roll.COUNT; roll++) {
            int best = deepen(replies, roll, lookahead - 1, settings.inner(), children[lookahead]);
            mean.add(roll, replies.chances(), best * Outcomes.COUNT);
        }
        mean.write(out, outAt);
        cache.store(planes, at, lookahead, out, outAt);
    }

    /** Writes what needs no search: finished games, what the horizon knows, what was searched before. */
    boolean known(int[] planes, int at, int lookahead, float[] out, int outAt) {
        return FinishedGames.write(planes, at, out, outAt)
                || horizon.write(planes, at, out, outAt)
                || cache.find(planes, at, lookahead, out, outAt);
    }

    /**
     * The chances after the best reply to one roll, for the side that plays it: one term of the mean of {@link #average}.
     * Returns the index of that reply in {@link #results}.
     */
    int reply(int[] planes, int at, int roll, int lookahead, float[] out, int outAt) {
        Replies replies = levels[lookahead + 1];
        replies.expand(planes, at, roll, roll + 1, evaluator);
        evaluations += replies.count();
        int best = deepen(replies, roll, lookahead, settings.inner(), children[lookahead + 1]);
        System.arraycopy(replies.chances(), best * Outcomes.COUNT, out, outAt, Outcomes.COUNT);
        return best;
    }

    /** What the replies that {@link #reply} looked at last with this lookahead lead to. */
    int[] results(int lookahead) {
        return levels[lookahead + 1].results();
    }

    /** Values the replies to a roll step by step up to a lookahead, fewer each time, and returns the best of the last. */
    private int deepen(Replies replies, int roll, int lookahead, List<Narrowing> narrowings, int[] child) {
        if (lookahead == 0) {
            return replies.best(roll, settings.objective());
        }
        replies.keepAll(roll);
        for (int reached = 0; reached < lookahead; reached++) {
            replies.narrow(LookaheadSettings.at(narrowings, reached), settings.objective());
            if (replies.keptCount() == 1) {
                reached = lookahead - 1;
            }
            for (int k = 0; k < replies.keptCount(); k++) {
                value(replies, replies.kept(k), reached + 1, child);
            }
        }
        replies.narrow(Narrowing.NONE, settings.objective());
        return replies.kept(0);
    }

    void value(Replies replies, int reply, int lookahead, int[] child) {
        int outAt = reply * Outcomes.COUNT;
        Planes.copySwapped(replies.results(), reply * Planes.STRIDE, child, 0);
        average(child, 0, lookahead, replies.chances(), outAt);
        Chances.swap(replies.chances(), outAt);
    }
}
