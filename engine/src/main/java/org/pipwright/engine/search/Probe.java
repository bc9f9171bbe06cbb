package org.pipwright.engine.search;

import java.util.Arrays;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.roll.Roll;

/**
 * The mean over the 21 rolls of the best replies, each valued with lookahead 1, given up as soon as it is sure to be more
 * than a limit. Star2 of B. W. Ballard, The *-minimax search procedure for trees containing chance nodes, Artificial
 * Intelligence 21, 1983: one reply to each roll is valued first, here the one that is best without lookahead; the best is
 * worth no less, so the mean of those values is a lower bound, which the other replies raise. What is not given up has
 * the same chances, bit for bit, as without bounds. Bounds on the worth of unvalued rolls (Star1) are left out: they
 * decided next to nothing.
 */
final class Probe {
    /** Means are added up here in double, and elsewhere kept in float: so much less than the limit may be rounding. */
    private static final double ROUNDING = 1e-5;

    /** The level of the search whose replies it looks at. */
    private static final int LEVEL = 2;

    private final Lookahead search;
    private final Pruning pruning;
    private final int[] sizes = new int[Roll.COUNT];
    private int[] kept = new int[512];

    Probe(Lookahead search, Pruning pruning) {
        this.search = search;
        this.pruning = pruning;
    }

    /**
     * Values the replies to all rolls.
     *
     * @param replies all replies to all rolls, valued without lookahead
     * @param limit points for the side that replies
     * @param out where to write the six means, for the side that replies; its only position is theirs
     * @return whether the mean may be as low as the limit; if not, nothing was written
     */
    boolean mean(Replies replies, double limit, Batch out) {
        double least = firstReplies(replies);
        RollMean mean = new RollMean(0);
        for (int roll = 0; roll < Roll.COUNT; roll++) {
            if (least > limit + ROUNDING) {
                return false;
            }
            int first = kept[replies.start(roll)];
            int best = first;
            double before = replies.worth(first, Columns.CUBELESS);
            for (int k = 1; k < sizes[roll]; k++) {
                int reply = kept[replies.start(roll) + k];
                search.value(replies, reply, 1, LEVEL);
                best = replies.better(reply, best, Columns.CUBELESS);
            }
            least += share(roll) * (replies.worth(best, Columns.CUBELESS) - before);
            mean.add(roll, replies.chances(), best * Outcomes.COUNT);
        }
        mean.write(out, 0);
        return true;
    }

    /** Prunes the replies, values the first to each roll and returns their mean. */
    private double firstReplies(Replies replies) {
        if (kept.length < replies.count()) {
            kept = Arrays.copyOf(kept, 2 * replies.count());
        }
        double mean = 0;
        for (int roll = 0; roll < Roll.COUNT; roll++) {
            replies.keepAll(roll, Columns.CUBELESS);
            Shortlist running = replies.running(Columns.CUBELESS);
            running.prune(pruning, replies);
            sizes[roll] = running.size();
            for (int k = 0; k < sizes[roll]; k++) {
                kept[replies.start(roll) + k] = running.get(k);
            }
            search.value(replies, running.get(0), 1, LEVEL);
            mean += share(roll) * replies.worth(running.get(0), Columns.CUBELESS);
        }
        return mean;
    }

    private static double share(int roll) {
        return Roll.all().get(roll).probability();
    }
}
