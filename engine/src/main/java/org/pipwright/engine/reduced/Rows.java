package org.pipwright.engine.reduced;

/** What the opponent's arrangement means for a mover's plays: blocked landings and, for each set of hits, the next row. */
final class Rows {
    /** Points the mover can't land on. */
    final int blocked;

    /** First cell of the opponent's row after each set of hits: add the mover's arrangement for the opponent's cell. */
    final int[] row = new int[Sides.HIT_SETS];

    private final int blot0;
    private final int blot1;
    private final int blot2;

    Rows(Sides sides, int opponent) {
        blocked = sides.blocks(opponent);
        for (int set = 0; set < row.length; set++) {
            row[set] = sides.afterHits(opponent, set) * sides.size();
        }
        blot0 = sides.blotPoint(opponent, 0);
        blot1 = sides.blotPoint(opponent, 1);
        blot2 = sides.blotPoint(opponent, 2);
    }

    /** The blots a play hits: bit b for the b-th. */
    int hits(int landings) {
        return landings >>> blot0 & 1 | (landings >>> blot1 & 1) << 1 | (landings >>> blot2 & 1) << 2;
    }
}
