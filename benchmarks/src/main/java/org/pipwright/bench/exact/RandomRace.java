package org.pipwright.bench.exact;

import java.util.SplittableRandom;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.reduced.ReducedGame;

/** Random races: each checker on a point of its own choice. */
final class RandomRace {
    private RandomRace() {}

    /** Both sides with so many checkers on points 1 to N, N at most 12, and the others off. */
    static Position of(SplittableRandom random, int points, int least, int most) {
        int[] planes = new int[Planes.STRIDE];
        scatter(random, planes, 0, least + random.nextInt(most - least + 1), points);
        scatter(random, planes, Planes.SIDE, least + random.nextInt(most - least + 1), points);
        return Position.ofPlanes(planes, 0);
    }

    /** One side, either of them, with one to six checkers left, the other with all fifteen. */
    static Position gammonish(SplittableRandom random, int points) {
        int[] planes = new int[Planes.STRIDE];
        int ahead = random.nextBoolean() ? 0 : Planes.SIDE;
        scatter(random, planes, ahead, 1 + random.nextInt(6), points);
        scatter(random, planes, Planes.SIDE - ahead, Position.FULL, points);
        return Position.ofPlanes(planes, 0);
    }

    /** An unfinished race of the game with two checkers, in which one side has borne off none. */
    static Position ofTwo(SplittableRandom random, ReducedGame game) {
        int[] planes = new int[Planes.STRIDE];
        while (true) {
            int cell = random.nextInt(game.cells());
            if (game.unfinished(cell)) {
                game.copyPlanes(cell, planes, 0);
                boolean bothBegun = (planes[0] & planes[Planes.SIDE] & 1) != 0;
                if (!bothBegun && !Planes.contact(planes, 0)) {
                    return Position.ofPlanes(planes, 0);
                }
            }
        }
    }

    private static void scatter(SplittableRandom random, int[] planes, int side, int checkers, int points) {
        for (int n = 0; n < Position.FULL; n++) {
            Planes.add(planes, side, n < checkers ? 1 + random.nextInt(points) : Planes.OFF);
        }
    }
}
