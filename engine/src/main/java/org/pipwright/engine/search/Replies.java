package org.pipwright.engine.search;

import java.util.Arrays;
import java.util.List;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.Sieve;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/**
 * All replies of one position to one or several rolls, side by side, with the chances of each for the side that plays and
 * what it is worth in each column: at first without lookahead, all from one call of the evaluator, which shares the work
 * among siblings. Replies that a sieve drops are worth minus infinity and never in the running.
 */
final class Replies {
    private final PlayGenerator generator = new PlayGenerator();
    private final int[] starts = new int[Roll.COUNT + 1];
    private int[] results = new int[512 * Planes.STRIDE];
    private float[] chances = new float[512 * Outcomes.COUNT];
    private double[] worth = new double[512];
    private int count;
    private int judged;
    private Columns columns = Columns.NONE;

    /** The replies in the running, a list a column. */
    private Shortlist[] lists = {new Shortlist(Columns.CUBELESS)};

    /** Those that are to be valued next, and when each reply was put among such last. */
    private int[] pending = new int[512];

    private int[] gathered = new int[512];
    private int times;

    /** Finds the replies to rolls first to end - 1 in the order of {@link Roll#all()}, and values what may be best. */
    void expand(int[] planes, int at, int first, int end, Sieve sieve, Columns wanted) {
        count = 0;
        for (int r = first; r < end; r++) {
            Roll roll = Roll.all().get(r);
            starts[r] = count;
            append(generator.generate(planes, at, roll.high(), roll.low()), generator.results(), 0);
        }
        starts[end] = count;
        prepare(wanted);
        judged = sieve.judge(planes, at, results, starts, first, end, columns, chances, worth);
    }

    /**
     * Takes over the replies to one roll of those that others hold, with what they are worth there in the wanted columns: all of
     * theirs, or the one without a cube.
     */
    void takeRoll(Replies from, int roll, Columns wanted) {
        int start = from.starts[roll];
        int size = from.starts[roll + 1] - start;
        count = 0;
        append(size, from.results, start);
        starts[roll] = 0;
        starts[roll + 1] = size;
        prepare(wanted);
        System.arraycopy(from.chances, start * Outcomes.COUNT, chances, 0, size * Outcomes.COUNT);
        int width = wanted.width();
        for (int i = 0; i < size; i++) {
            System.arraycopy(from.worth, (start + i) * from.columns.width(), worth, i * width, width);
        }
        judged = 0;
    }

    /**
     * Finds the replies to some rolls that hit nothing, and values what may be best. Returns as which roll the replies to each
     * are kept here, -1 where there are none.
     */
    int[] expandQuiet(int[] planes, int at, List<Roll> rolls, Sieve sieve) {
        int[] kept = new int[rolls.size()];
        int end = 0;
        count = 0;
        for (int i = 0; i < kept.length; i++) {
            int quiet = generateQuiet(planes, at, rolls.get(i));
            kept[i] = quiet == 0 ? -1 : end++;
            if (quiet > 0) {
                starts[kept[i]] = count;
                append(quiet, generator.results(), 0);
            }
        }
        starts[end] = count;
        prepare(Columns.NONE);
        judged = end == 0 ? 0 : sieve.judge(planes, at, results, starts, 0, end, columns, chances, worth);
        return kept;
    }

    /** Leaves the plays that hit nothing at the front of the generator's results; returns their number. */
    private int generateQuiet(int[] planes, int at, Roll roll) {
        int size = generator.generate(planes, at, roll.high(), roll.low());
        int[] found = generator.results();
        int before = Planes.count(planes, at + Planes.SIDE, Planes.BAR);
        int quiet = 0;
        for (int i = 0; i < size; i++) {
            if (Planes.count(found, i * Planes.STRIDE + Planes.SIDE, Planes.BAR) == before) {
                System.arraycopy(found, i * Planes.STRIDE, found, quiet++ * Planes.STRIDE, Planes.STRIDE);
            }
        }
        return quiet;
    }

    /** Takes over the results of a single roll, as roll 0, and values all of them, or what may be best. */
    void take(int[] planes, int at, int[] found, int size, Sieve sieve, Columns wanted, boolean all) {
        count = 0;
        append(size, found, 0);
        starts[0] = 0;
        starts[1] = size;
        prepare(wanted);
        if (all) {
            sieve.judgeAll(planes, at, results, size, columns, chances, worth);
            judged = size;
        } else {
            judged = sieve.judge(planes, at, results, starts, 0, 1, columns, chances, worth);
        }
    }

    private void append(int size, int[] found, int first) {
        if ((count + size) * Planes.STRIDE > results.length) {
            int room = 2 * (count + size);
            results = Arrays.copyOf(results, room * Planes.STRIDE);
            chances = new float[room * Outcomes.COUNT];
        }
        System.arraycopy(found, first * Planes.STRIDE, results, count * Planes.STRIDE, size * Planes.STRIDE);
        count += size;
    }

    private void prepare(Columns wanted) {
        columns = wanted;
        int width = columns.width();
        if (worth.length < count * width) {
            worth = new double[2 * count * width];
        }
        for (int column = lists.length; column < width; column++) {
            lists = Arrays.copyOf(lists, column + 1);
            lists[column] = new Shortlist(column);
        }
    }

    int count() {
        return count;
    }

    /** How many of them were valued by the evaluator that judges. */
    int judged() {
        return judged;
    }

    int[] results() {
        return results;
    }

    /** Chances a reply; who changes those of one tells with {@link #changed}. */
    float[] chances() {
        return chances;
    }

    /** Worth a reply and column, as the columns count them. */
    double[] worth() {
        return worth;
    }

    Columns columns() {
        return columns;
    }

    /** The chances of a reply are new, and so is what they are worth without the cube. */
    void changed(int reply) {
        worth[reply * columns.width()] = Chances.equity(chances, reply * Outcomes.COUNT);
    }

    /** What a reply is worth. */
    double worth(int reply, int column) {
        return worth[reply * columns.width() + column];
    }

    /** The best reply to a roll, the first of equals. */
    int best(int roll, int column) {
        int width = columns.width();
        int best = starts[roll];
        double highest = worth[best * width + column];
        for (int i = best + 1; i < starts[roll + 1]; i++) {
            double next = worth[i * width + column];
            if (next > highest) {
                highest = next;
                best = i;
            }
        }
        return best;
    }

    /** The better of two replies, the first in order of index if they are equal. */
    int better(int reply, int other, int column) {
        return before(reply, other, column) ? reply : other;
    }

    boolean before(int reply, int other, int column) {
        double mine = worth(reply, column);
        double theirs = worth(other, column);
        return mine > theirs || mine == theirs && reply < other;
    }

    /** Where the replies to a roll begin. */
    int start(int roll) {
        return starts[roll];
    }

    /** The replies in the running in a column. */
    Shortlist running(int column) {
        return lists[column];
    }

    /** Puts every reply to a roll in the running, but for those dropped. */
    void keepAll(int roll, int column) {
        lists[column].keep(starts[roll], starts[roll + 1], this);
    }

    /**
     * Gathers the replies in the running in any of some columns, each once; columns with a single one are left out but at
     * the last step. Returns their number.
     */
    int gather(int first, int end, boolean last) {
        if (gathered.length < count) {
            gathered = new int[2 * count];
            pending = new int[2 * count];
            times = 0;
        }
        if (++times == Integer.MAX_VALUE) {
            Arrays.fill(gathered, 0);
            times = 1;
        }
        int size = 0;
        for (int column = first; column < end; column++) {
            Shortlist running = lists[column];
            if (running.size() == 1 && !last) {
                continue;
            }
            for (int k = 0; k < running.size(); k++) {
                int reply = running.get(k);
                if (gathered[reply] != times) {
                    gathered[reply] = times;
                    pending[size++] = reply;
                }
            }
        }
        return size;
    }

    /** One of those gathered last. */
    int pending(int k) {
        return pending[k];
    }
}
