package org.pipwright.engine.rollout;

import java.util.HashMap;
import java.util.Map;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.RollLuck;

/**
 * The luck of rolls early in trials, where the same positions come again and again: one before the first roll, 21 before
 * the second, some hundred before the third. It is remembered for all rolls of a position at once. Bounded; serves one
 * thread.
 */
final class EarlyLuck {
    /** An entry takes about 1.2 KB. */
    static final int MAX_POSITIONS = 2048;

    private final RollLuck luck;
    private final Map<Position, double[]> known = new HashMap<>();

    EarlyLuck(RollLuck luck) {
        this.luck = luck;
    }

    /** What {@link RollLuck#measure(int[], int, Roll, double[])} would write for the position in {@code planes}. */
    void measure(int[] planes, Roll roll, double[] out) {
        Position position = Position.ofPlanes(planes, 0);
        double[] all = known.get(position);
        if (all == null) {
            all = new double[Roll.COUNT * Outcomes.COUNT];
            luck.measureAll(planes, 0, all);
            if (known.size() == MAX_POSITIONS) {
                known.clear();
            }
            known.put(position, all);
        }
        System.arraycopy(all, roll.index() * Outcomes.COUNT, out, 0, Outcomes.COUNT);
    }
}
