package org.pipwright.training.cuda;

import java.util.SplittableRandom;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/** Positions from games played at random, every phase of the game among them. */
final class RandomPositions {
    private RandomPositions() {}

    /** So many unfinished positions, eight ints each. */
    static int[] of(int count, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        PlayGenerator plays = new PlayGenerator();
        int[] all = new int[8 * count];
        int[] planes = Position.start().toPlanes();
        int size = 0;
        for (int turn = 0; size < count; turn++) {
            int die = random.nextInt(6) + 1;
            int other = random.nextInt(6) + 1;
            int chosen = random.nextInt(plays.generate(planes, 0, Math.max(die, other), Math.min(die, other)));
            boolean over = (Planes.occupied(plays.results(), 8 * chosen) & Planes.ON_BOARD) == 0;
            if (over) {
                planes = Position.start().toPlanes();
            } else {
                Planes.copySwapped(plays.results(), 8 * chosen, planes, 0);
            }
            if (random.nextInt(8) == 0) {
                System.arraycopy(planes, 0, all, 8 * size++, 8);
            }
        }
        return all;
    }
}
