package org.pipwright.engine.drill;

import java.util.List;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/** How alike two positions are. */
public final class Likeness {
    private Likeness() {}

    /**
     * How many checkers have to be put elsewhere to make one position of the other, those of both sides counted: 0 for
     * equal positions, at most 30. A metric: half the sum of the differences of all 52 counts.
     *
     * @param a a position
     * @param b another with as many checkers
     * @return number of checkers
     */
    public static int checkersApart(Position a, Position b) {
        int differences = 0;
        for (int place = 0; place < Planes.PLACES; place++) {
            differences += Math.abs(a.count(place) - b.count(place));
            differences += Math.abs(a.opponentCount(place) - b.opponentCount(place));
        }
        return differences / 2;
    }

    /** Whether a position differs enough from all of some others. */
    static boolean unlikeAll(Exercise exercise, List<Exercise> others, int apart) {
        return others.stream().allMatch(other -> checkersApart(other.position(), exercise.position()) >= apart);
    }
}
