package org.pipwright.engine.search;

/** The replies to a roll that are still in the running in one column of worth, best first. */
final class Shortlist {
    private final int column;
    private int[] kept = new int[64];
    private int size;

    Shortlist(int column) {
        this.column = column;
    }

    /** Puts replies in the running that were not dropped before they were judged, in the order of their indices. */
    void keep(int from, int to, Replies replies) {
        if (kept.length < to - from) {
            kept = new int[2 * (to - from)];
        }
        size = 0;
        for (int i = from; i < to; i++) {
            kept[size] = i;
            size += replies.worth(i, column) == Double.NEGATIVE_INFINITY ? 0 : 1;
        }
    }

    int size() {
        return size;
    }

    int get(int rank) {
        return kept[rank];
    }

    /** Sorts the replies, best first and equals in order of index, and drops what the pruning drops. */
    void prune(Pruning pruning, Replies replies) {
        int before = size;
        size = 0;
        for (int k = 0; k < before; k++) {
            insert(kept[k], pruning.most(), replies);
        }
        double least = replies.columns().least(column, replies.worth(kept[0], column), pruning.within());
        while (size > 1 && replies.worth(kept[size - 1], column) < least) {
            size--;
        }
    }

    /** One step of an insertion sort that keeps the first {@code most}; reads ahead of where it writes. */
    private void insert(int reply, int most, Replies replies) {
        int place = size;
        while (place > 0 && replies.before(reply, kept[place - 1], column)) {
            place--;
        }
        if (place == most) {
            return;
        }
        size = Math.min(size + 1, most);
        System.arraycopy(kept, place, kept, place + 1, size - 1 - place);
        kept[place] = reply;
    }

    /** The best of them, the first of equals. */
    int best(Replies replies) {
        int best = kept[0];
        for (int k = 1; k < size; k++) {
            best = replies.better(kept[k], best, column);
        }
        return best;
    }
}
