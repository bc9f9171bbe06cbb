package org.pipwright.training.cuda;

import java.util.Arrays;
import org.pipwright.engine.position.Planes;

/**
 * Finds equal positions in a list, so that each is judged once: different rolls often lead to the same. Serves one thread.
 */
final class EqualResults {
    private int[] table = new int[0];
    private int[] firsts = new int[0];
    private int[] distinct = new int[0];

    /** Place of each position of the last list in {@link #distinct()}. */
    int[] places() {
        return firsts;
    }

    /** The different positions of the last list, in the order of their first places, eight ints each. */
    int[] distinct() {
        return distinct;
    }

    /**
     * Looks at a list.
     *
     * @param planes positions, eight ints each
     * @param count how many
     * @return how many different ones
     */
    int find(int[] planes, int count) {
        room(count);
        Arrays.fill(table, -1);
        int size = 0;
        for (int i = 0; i < count; i++) {
            int at = Planes.STRIDE * i;
            int slot = hash(planes, at) & table.length - 1;
            while (table[slot] >= 0 && !equal(planes, at, Planes.STRIDE * table[slot])) {
                slot = slot + 1 & table.length - 1;
            }
            if (table[slot] < 0) {
                System.arraycopy(planes, at, distinct, Planes.STRIDE * size, Planes.STRIDE);
                table[slot] = size++;
            }
            firsts[i] = table[slot];
        }
        return size;
    }

    /** At most half of the table is filled. */
    private void room(int count) {
        if (firsts.length >= count) {
            return;
        }
        int length = Integer.highestOneBit(Math.max(512, count) - 1) << 1;
        firsts = new int[length];
        distinct = new int[Planes.STRIDE * length];
        table = new int[2 * length];
    }

    private static int hash(int[] planes, int at) {
        int hash = 0;
        for (int k = at; k < at + Planes.STRIDE; k++) {
            hash = (hash ^ planes[k]) * 0x9E3779B1;
            hash ^= hash >>> 15;
        }
        return hash;
    }

    private boolean equal(int[] planes, int at, int other) {
        return Arrays.equals(planes, at, at + Planes.STRIDE, distinct, other, other + Planes.STRIDE);
    }
}
