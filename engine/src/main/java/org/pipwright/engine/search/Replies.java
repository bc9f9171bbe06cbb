package org.pipwright.engine.search;

import java.util.Arrays;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/**
 * All replies of one position to one or several rolls, side by side, with the chances of each for the side that plays: at
 * first without lookahead, all from one call of the evaluator, which shares the work among siblings.
 */
final class Replies {
    private final PlayGenerator generator = new PlayGenerator();
    private final int[] starts = new int[Roll.COUNT + 1];
    private int[] results = new int[512 * Planes.STRIDE];
    private float[] chances = new float[512 * Outcomes.COUNT];
    private int count;

    /** Indices of the replies still in the running, best first. */
    private int[] kept = new int[512];

    private int keptCount;

    /** Finds and values the replies to rolls first to end - 1 in the order of {@link Roll#all()}. */
    void expand(int[] planes, int at, int first, int end, PositionEvaluator evaluator) {
        count = 0;
        for (int r = first; r < end; r++) {
            Roll roll = Roll.all().get(r);
            starts[r] = count;
            append(generator.generate(planes, at, roll.high(), roll.low()), generator.results());
        }
        starts[end] = count;
        evaluator.evaluateResults(planes, at, results, count, chances);
    }

    /** Takes over the results of a single roll, as roll 0. */
    void take(int[] planes, int at, int[] found, int size, PositionEvaluator evaluator) {
        count = 0;
        append(size, found);
        starts[0] = 0;
        starts[1] = size;
        evaluator.evaluateResults(planes, at, results, count, chances);
    }

    private void append(int size, int[] found) {
        if ((count + size) * Planes.STRIDE > results.length) {
            int room = 2 * (count + size);
            results = Arrays.copyOf(results, room * Planes.STRIDE);
            chances = new float[room * Outcomes.COUNT];
            kept = new int[room];
        }
        System.arraycopy(found, 0, results, count * Planes.STRIDE, size * Planes.STRIDE);
        count += size;
    }

    int count() {
        return count;
    }

    int[] results() {
        return results;
    }

    float[] chances() {
        return chances;
    }

    /** The best reply to a roll, the first of equals. */
    int best(int roll, Objective objective) {
        int best = starts[roll];
        float highest = objective.worth(chances, best * Outcomes.COUNT);
        for (int i = best + 1; i < starts[roll + 1]; i++) {
            float worth = objective.worth(chances, i * Outcomes.COUNT);
            if (worth > highest) {
                highest = worth;
                best = i;
            }
        }
        return best;
    }

    /** What a reply is worth. */
    float worth(int reply, Objective objective) {
        return objective.worth(chances, reply * Outcomes.COUNT);
    }

    /** The better of two replies, the first in order of index if they are equal. */
    int better(int reply, int other, Objective objective) {
        return before(worth(reply, objective), reply, other, objective) ? reply : other;
    }

    /** Where the replies to a roll begin. */
    int start(int roll) {
        return starts[roll];
    }

    /** Puts every reply to a roll in the running. */
    void keepAll(int roll) {
        keptCount = starts[roll + 1] - starts[roll];
        for (int i = 0; i < keptCount; i++) {
            kept[i] = starts[roll] + i;
        }
    }

    int keptCount() {
        return keptCount;
    }

    int kept(int rank) {
        return kept[rank];
    }

    /** Sorts the kept replies, best first and equals in order of index, and drops what the narrowing drops. */
    void narrow(Narrowing narrowing, Objective objective) {
        int size = 0;
        for (int k = 0; k < keptCount; k++) {
            size = insert(kept[k], size, narrowing.most(), objective);
        }
        float least = objective.worth(chances, kept[0] * Outcomes.COUNT) - narrowing.within();
        while (size > 1 && objective.worth(chances, kept[size - 1] * Outcomes.COUNT) < least) {
            size--;
        }
        keptCount = size;
    }

    /** One step of an insertion sort that keeps the first {@code most}; reads ahead of where it writes. */
    private int insert(int reply, int size, int most, Objective objective) {
        float worth = objective.worth(chances, reply * Outcomes.COUNT);
        int place = size;
        while (place > 0 && before(worth, reply, kept[place - 1], objective)) {
            place--;
        }
        if (place == most) {
            return size;
        }
        int newSize = Math.min(size + 1, most);
        System.arraycopy(kept, place, kept, place + 1, newSize - 1 - place);
        kept[place] = reply;
        return newSize;
    }

    private boolean before(float worth, int reply, int other, Objective objective) {
        float theirs = objective.worth(chances, other * Outcomes.COUNT);
        return worth > theirs || worth == theirs && reply < other;
    }
}
