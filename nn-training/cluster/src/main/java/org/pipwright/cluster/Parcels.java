package org.pipwright.cluster;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;

/**
 * Puts tasks into parcels that take about half a second each, so that sending them costs little, a lost one costs little, and
 * nobody has nothing to do for long. How tasks are packed changes no result.
 */
final class Parcels {
    private static final double NANOS = 5e8;

    /** Grows by this factor at most: the first tasks take longer than later ones. */
    private static final int STEP = 4;

    private static final int MAX_TASKS = 1 << 14;

    private int each = 1;

    /** The next parcels, as many as there may be; the last tasks are spread over all of them, and at the end there are none. */
    List<byte[]> next(Iterator<? extends Serializable> tasks, int parcels) {
        List<Serializable> some = new ArrayList<>();
        while (some.size() < (long) parcels * each && tasks.hasNext()) {
            some.add(tasks.next());
        }
        List<byte[]> packed = new ArrayList<>();
        int count = Math.min(parcels, some.size());
        for (int i = 0; i < count; i++) {
            int from = (int) ((long) some.size() * i / count);
            int to = (int) ((long) some.size() * (i + 1) / count);
            packed.add(Bytes.of(some.subList(from, to).toArray(new Serializable[0])));
        }
        return packed;
    }

    /** Learns from how long one of so many tasks took. */
    void took(int tasks, long nanos) {
        double wanted = tasks * NANOS / Math.max(1, nanos);
        each = (int) Math.max(1, Math.min(Math.min(wanted, (double) each * STEP), MAX_TASKS));
    }

    int each() {
        return each;
    }
}
