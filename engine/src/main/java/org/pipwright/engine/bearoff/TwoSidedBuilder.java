package org.pipwright.engine.bearoff;

import java.nio.ByteBuffer;
import java.nio.IntBuffer;
import java.util.Arrays;
import org.pipwright.engine.roll.Roll;

/**
 * Computes the exact values of all pairs of arrangements, both sides playing and doubling to maximise their equity, by
 * backward induction.
 *
 * <p>Row a of the table has the pairs in which the side <em>not</em> on roll has arrangement a; entry b of the row is for
 * the side on roll having b. Rows are computed in the order of a's pip count. First the values with a on roll against
 * every b: they need only entries b of rows with fewer pips than a. Then the row itself: it needs only those values. Rows
 * of one pip count do not need each other, so they can be computed side by side.
 */
final class TwoSidedBuilder {
    private static final int LANES = TwoSidedTable.LANES;

    private final SideIndex index;
    private final Successors successors;
    private final ByteBuffer content;

    /**
     * A builder.
     *
     * @param content where to write, {@link TwoSidedTable#contentSize} bytes in little-endian order
     */
    TwoSidedBuilder(SideIndex index, ByteBuffer content) {
        this.index = index;
        this.successors = new Successors(index);
        this.content = content;
    }

    void build(int threads, TableProgress progress) {
        new PipLevels(index, 1).run(threads, Worker::new, progress);
    }

    /** Computes rows on one thread. */
    private final class Worker implements PipLevels.Worker {
        private final int width = LANES * index.size();
        private final IntBuffer table =
                content.duplicate().order(content.order()).asIntBuffer();
        private final int[] row = new int[width];
        private final int[] least = new int[width];
        private final long[] sums = new long[width];
        private final int[] against = new int[width];

        @Override
        public void compute(int a) {
            if (a == 0) {
                Arrays.fill(row, -TwoSidedTable.UNIT);
            } else {
                rollAgainstAll(a);
                rollOfAll();
            }
            table.put(width * a, row);
        }

        /** Values with a on roll against every b, into {@code against}. */
        private void rollAgainstAll(int a) {
            Arrays.fill(sums, 0);
            for (Roll roll : Roll.all()) {
                leastRow(successors.from(a, roll.index()), successors.to(a, roll.index()));
                int ways = roll.ways();
                for (int i = 0; i < width; i++) {
                    sums[i] += (long) ways * least[i];
                }
            }
            for (int b = 1; b < index.size(); b++) {
                TwoSidedTable.settle(sums, LANES * b, against, LANES * b);
            }
            Arrays.fill(against, 0, LANES, -TwoSidedTable.UNIT);
        }

        /** The least of the rows of some results, entry by entry: what each opponent gets after the best play. */
        private void leastRow(int from, int to) {
            table.get(width * successors.at(from), least);
            for (int r = from + 1; r < to; r++) {
                table.get(width * successors.at(r), row);
                for (int i = 0; i < width; i++) {
                    least[i] = Math.min(least[i], row[i]);
                }
            }
        }

        /** Values with every b on roll, each roll leading to one of {@code against}, into {@code row}. */
        private void rollOfAll() {
            Arrays.fill(row, 0, LANES, TwoSidedTable.UNIT);
            long[] sum = new long[LANES];
            for (int b = 1; b < index.size(); b++) {
                Arrays.fill(sum, 0);
                for (Roll roll : Roll.all()) {
                    addLeast(successors.from(b, roll.index()), successors.to(b, roll.index()), roll.ways(), sum);
                }
                TwoSidedTable.settle(sum, 0, row, LANES * b);
            }
        }

        private void addLeast(int from, int to, int ways, long[] sum) {
            int least0 = Integer.MAX_VALUE;
            int least1 = Integer.MAX_VALUE;
            int least2 = Integer.MAX_VALUE;
            int least3 = Integer.MAX_VALUE;
            for (int r = from; r < to; r++) {
                int at = LANES * successors.at(r);
                least0 = Math.min(least0, against[at]);
                least1 = Math.min(least1, against[at + 1]);
                least2 = Math.min(least2, against[at + 2]);
                least3 = Math.min(least3, against[at + 3]);
            }
            sum[0] += (long) ways * least0;
            sum[1] += (long) ways * least1;
            sum[2] += (long) ways * least2;
            sum[3] += (long) ways * least3;
        }
    }
}
