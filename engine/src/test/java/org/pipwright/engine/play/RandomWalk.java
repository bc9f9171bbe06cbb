package org.pipwright.engine.play;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** Positions met by random play from the start: every unfinished one, game after game, from one seed. */
public final class RandomWalk {
    private final PlayGenerator generator = new PlayGenerator();
    private final SplittableRandom random;
    private final Position start;
    private Position position;

    public RandomWalk(int checkers, long seed) {
        random = new SplittableRandom(seed);
        start = Position.start(checkers);
        position = start;
    }

    /** The next unfinished position. */
    public Position next() {
        Position met = position;
        Roll roll = roll();
        int count = generator.generate(met.toPlanes(), 0, roll.high(), roll.low());
        int chosen = random.nextInt(count) * Planes.STRIDE;
        position = Position.ofPlanes(generator.results(), chosen).swapped();
        if (position.finished()) {
            position = start;
        }
        return met;
    }

    public List<Position> next(int count) {
        List<Position> met = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            met.add(next());
        }
        return met;
    }

    public Roll roll() {
        return Roll.of(random.nextInt(6) + 1, random.nextInt(6) + 1);
    }

    /** 0 to bound - 1. */
    public int below(int bound) {
        return random.nextInt(bound);
    }
}
