package org.pipwright.engine.cube;

import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * How soon an ending without contact is over.
 *
 * @param opponentOff chance that the opponent bears off its last checker with its next roll
 * @param offWithTwo whether the side on roll bears off its last checker with any two rolls
 */
record LastRolls(double opponentOff, boolean offWithTwo) {
    static LastRolls of(Position position) {
        int[] planes = position.toPlanes();
        PlayGenerator generator = new PlayGenerator();
        boolean offWithTwo = Roll.all().stream().allMatch(roll -> offNext(generator, planes, roll));
        return new LastRolls(off(generator, position.swapped().toPlanes()), offWithTwo);
    }

    /** Whether some play of a roll leaves nothing that any further roll would not bear off. */
    private static boolean offNext(PlayGenerator generator, int[] planes, Roll roll) {
        int count = generator.generate(planes, 0, roll.high(), roll.low());
        int[] results = generator.results().clone();
        for (int i = 0; i < count; i++) {
            int[] result = new int[Planes.STRIDE];
            System.arraycopy(results, i * Planes.STRIDE, result, 0, Planes.SIDE);
            if (off(generator, result) == 1) {
                return true;
            }
        }
        return false;
    }

    /** Chance of a side to bear off all with one roll. */
    private static double off(PlayGenerator generator, int[] planes) {
        int ways = 0;
        for (Roll roll : Roll.all()) {
            ways += ends(generator, planes, roll) ? roll.ways() : 0;
        }
        return ways / 36.0;
    }

    private static boolean ends(PlayGenerator generator, int[] planes, Roll roll) {
        if (left(planes, 0) == 0) {
            return true;
        }
        int count = generator.generate(planes, 0, roll.high(), roll.low());
        for (int i = 0; i < count; i++) {
            if (left(generator.results(), i * Planes.STRIDE) == 0) {
                return true;
            }
        }
        return false;
    }

    private static int left(int[] planes, int at) {
        return Planes.occupied(planes, at) & Planes.ON_BOARD;
    }
}
