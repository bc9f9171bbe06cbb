package org.pipwright.engine.bearoff;

/**
 * What building a table will take on this machine, found by building a small one of the same kind first. Rough: the
 * caches of the processor and other programs have their say.
 *
 * @param bytes size of the file; exact for two-sided tables
 * @param seconds time to build
 */
public record TableCost(long bytes, double seconds) {
    /** Arrangements of the small table. */
    private static final int SAMPLE = 20_000;

    /** Arrangements of more checkers have more plays and longer distributions than those of the small table. */
    private static final double GROWTH = 1.6;

    /**
     * The cost of a table.
     *
     * @param kind which kind
     * @param index its size
     * @param threads threads that will build it
     * @return size and time
     */
    public static TableCost of(TableKind kind, SideIndex index, int threads) {
        return kind == TableKind.ONE_SIDED ? oneSided(index, threads) : twoSided(index, threads);
    }

    private static TableCost oneSided(SideIndex index, int threads) {
        int checkers = 1;
        while (checkers < index.checkers() && new SideIndex(index.points(), checkers + 1).size() <= SAMPLE) {
            checkers++;
        }
        SideIndex small = new SideIndex(index.points(), checkers);
        long start = System.nanoTime();
        OneSidedTable table = OneSidedTable.build(small, threads, TableProgress.NONE);
        double seconds = (System.nanoTime() - start) / 1e9;
        double times = GROWTH * index.size() / small.size();
        return new TableCost(Math.round(times * table.content().remaining()), times * seconds);
    }

    private static TableCost twoSided(SideIndex index, int threads) {
        SideIndex small = new SideIndex(index.points(), Math.min(index.checkers(), 5));
        long start = System.nanoTime();
        TwoSidedTable.build(small, threads, TableProgress.NONE);
        double seconds = (System.nanoTime() - start) / 1e9;
        // Each result of each arrangement is compared over a whole row.
        double work = new Successors(index).count() * (double) index.size();
        double times = work / (new Successors(small).count() * (double) small.size());
        return new TableCost(TwoSidedTable.contentSize(index) + TableFile.HEADER, times * seconds);
    }
}
