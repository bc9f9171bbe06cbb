package org.pipwright.engine.bearoff;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * For every arrangement of one side's checkers on its first points: the distribution of its rolls to bear off all of
 * them under the play that minimises the mean number, and apart from it the distribution of its rolls to bear off the
 * first, if none is off yet, under the play that minimises that number's mean (the side tries only to save the gammon).
 *
 * <p>A read-only view of a buffer, shared by threads. Quantised: means are off by less than 1.5e-7 rolls, a survival
 * chance by about 1e-7. The buffer holds one int an arrangement, in the order of the {@link SideIndex}: the place of its
 * two records, the one for all checkers first.
 */
public final class OneSidedTable {
    /** Most rolls a distribution can have, with room. */
    static final int MAX_ROLLS = 256;

    /** Entries are read four bytes at a time, of which the last may lie behind the last record. */
    private static final int PADDING = 1;

    private final SideIndex index;
    private final ByteBuffer buffer;

    OneSidedTable(SideIndex index, ByteBuffer buffer) {
        this.index = index;
        this.buffer = buffer.slice().order(ByteOrder.LITTLE_ENDIAN);
    }

    /**
     * Computes a table in memory.
     *
     * @param index which arrangements
     * @param threads threads to use, at least 1
     * @param progress told how far it has come
     * @return the table
     */
    public static OneSidedTable build(SideIndex index, int threads, TableProgress progress) {
        OneSidedBuilder builder = new OneSidedBuilder(index);
        builder.build(threads, progress);
        return new OneSidedTable(index, pack(index.size(), builder));
    }

    private static ByteBuffer pack(int size, OneSidedBuilder builder) {
        int[] places = new int[size];
        int end = Integer.BYTES * size;
        for (int i = 0; i < size; i++) {
            places[i] = end;
            int record = Survival.recordSize(builder.all(i)) + Survival.recordSize(builder.first(i));
            end = Math.addExact(end, record);
        }
        ByteBuffer content = ByteBuffer.allocate(end + PADDING).order(ByteOrder.LITTLE_ENDIAN);
        content.asIntBuffer().put(places);
        content.position(Integer.BYTES * size);
        for (int i = 0; i < size; i++) {
            Survival.encode(builder.all(i), content);
            Survival.encode(builder.first(i), content);
        }
        return content.clear();
    }

    /**
     * Which arrangements the table holds.
     *
     * @return the index
     */
    public SideIndex index() {
        return index;
    }

    /** The content, for writing to a file. */
    ByteBuffer content() {
        return buffer.duplicate().order(ByteOrder.LITTLE_ENDIAN);
    }

    private int all(int arrangement) {
        return buffer.getInt(Integer.BYTES * arrangement);
    }

    private int first(int arrangement) {
        int at = all(arrangement);
        return at + 2 + 3 * (buffer.get(at + 1) & 0xFF);
    }

    /**
     * Mean rolls to bear off all checkers.
     *
     * @param arrangement as {@link SideIndex#of} gives it
     * @return rolls, 0 if none is on the board
     */
    public double mean(int arrangement) {
        return Survival.mean(buffer, all(arrangement));
    }

    /**
     * Mean rolls to bear off the first checker, none being off.
     *
     * @param arrangement as {@link SideIndex#of} gives it
     * @return rolls, 0 if none is on the board
     */
    public double meanToFirst(int arrangement) {
        return Survival.mean(buffer, first(arrangement));
    }

    /** Writes the survival chances of the rolls to bear off all checkers; returns how many are not 0. */
    int survival(int arrangement, double[] out) {
        return Survival.decode(buffer, all(arrangement), out);
    }

    /** Writes the survival chances of the rolls to bear off the first checker; returns how many are not 0. */
    int survivalToFirst(int arrangement, double[] out) {
        return Survival.decode(buffer, first(arrangement), out);
    }

    /**
     * Distribution of the rolls to bear off all checkers.
     *
     * @param arrangement as {@link SideIndex#of} gives it
     * @return the distribution
     */
    public RollSpread rolls(int arrangement) {
        double[] survival = new double[MAX_ROLLS];
        survival(arrangement, survival);
        return new RollSpread(survival);
    }

    /**
     * Distribution of the rolls to bear off the first checker, none being off.
     *
     * @param arrangement as {@link SideIndex#of} gives it
     * @return the distribution
     */
    public RollSpread rollsToFirst(int arrangement) {
        double[] survival = new double[MAX_ROLLS];
        survivalToFirst(arrangement, survival);
        return new RollSpread(survival);
    }
}
