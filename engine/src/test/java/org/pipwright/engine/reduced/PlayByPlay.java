package org.pipwright.engine.reduced;

import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** The slow way: one position at a time with the play generator of the full game. */
final class PlayByPlay {
    private PlayByPlay() {}

    /** Value before the roll: the mean over rolls of the best play's value, given the value of any position to its roller. */
    static double backup(Position position, ToDoubleFunction<Position> value) {
        PlayGenerator generator = new PlayGenerator();
        double sum = 0;
        for (Roll roll : Roll.all()) {
            generator.generate(position.toPlanes(), 0, roll.high(), roll.low());
            double best = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < generator.size(); i++) {
                Position next = Position.ofPlanes(generator.results(), i * Planes.STRIDE)
                        .swapped();
                best = Math.max(best, -value.applyAsDouble(next));
            }
            sum += roll.probability() * best;
        }
        return sum;
    }

    /** A random unfinished position of a game. */
    static Position random(ReducedGame game, SplittableRandom random) {
        while (true) {
            int cell = random.nextInt(game.cells());
            if (game.unfinished(cell)) {
                return position(game, cell);
            }
        }
    }

    static Position position(ReducedGame game, int cell) {
        int[] planes = new int[Planes.STRIDE];
        game.copyPlanes(cell, planes, 0);
        return Position.ofPlanes(planes, 0);
    }
}
