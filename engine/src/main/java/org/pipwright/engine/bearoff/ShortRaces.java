package org.pipwright.engine.bearoff;

import java.util.Arrays;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/**
 * Exact chances of races of at most three checkers a side, wherever these stand, both sides playing to win and at least one
 * checker of each borne off, so that gammons are impossible. What can follow on a question is worked out from the ends and
 * kept. Shared by threads, which wait for each other.
 */
final class ShortRaces {
    private static final SideIndex SIDES = new SideIndex(Planes.PLACES - 2, 3);

    private static final float UNKNOWN = -1;

    private static final ShortRaces ALL = new ShortRaces();

    private final PlayGenerator generator = new PlayGenerator();

    /** By arrangement and roll, what the roll can make of it. */
    private final int[][][] results = new int[SIDES.size()][][];

    /** By the arrangements of the side on roll and of the other; float will do, since each roll rounds once. */
    private final float[][] wins = new float[SIDES.size()][];

    private ShortRaces() {}

    /** Whether an unfinished race, whose planes are in an array, is one of these. */
    static boolean covers(int[] planes, int at) {
        int other = at + Planes.SIDE;
        boolean bothHaveBegun = (Planes.occupied(planes, at) & Planes.occupied(planes, other) & 1) != 0;
        return bothHaveBegun && SIDES.covers(planes, at) && SIDES.covers(planes, other);
    }

    /** Chance of the side on roll to win such a race. */
    static double win(int[] planes, int at) {
        synchronized (ALL) {
            return ALL.win(SIDES.of(planes, at), SIDES.of(planes, at + Planes.SIDE));
        }
    }

    /** Plays bring sides nearer to their ends, so this ends too, after as many rolls as a race can have. */
    private float win(int mine, int theirs) {
        if (wins[mine] == null) {
            wins[mine] = new float[SIDES.size()];
            Arrays.fill(wins[mine], UNKNOWN);
        }
        if (wins[mine][theirs] == UNKNOWN) {
            double win = 0;
            for (Roll roll : Roll.all()) {
                float least = 1;
                for (int result : results(mine)[roll.index()]) {
                    least = Math.min(least, result == 0 ? 0 : win(theirs, result));
                }
                win += roll.probability() * (1 - least);
            }
            wins[mine][theirs] = (float) win;
        }
        return wins[mine][theirs];
    }

    private int[][] results(int arrangement) {
        if (results[arrangement] == null) {
            int[] planes = new int[Planes.STRIDE];
            SIDES.write(arrangement, planes, 0);
            int[][] byRoll = new int[Roll.COUNT][];
            for (Roll roll : Roll.all()) {
                byRoll[roll.index()] = new int[generator.generate(planes, 0, roll.high(), roll.low())];
                Arrays.setAll(byRoll[roll.index()], i -> SIDES.of(generator.results(), i * Planes.STRIDE));
            }
            results[arrangement] = byRoll;
        }
        return results[arrangement];
    }
}
