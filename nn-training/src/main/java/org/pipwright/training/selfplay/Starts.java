package org.pipwright.training.selfplay;

import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;

/** Positions that games of self-play begin from: the usual one, or, for a share of games, one after a few random turns. */
final class Starts {
    private static final int PARTS = 1 << 20;
    private static final int MIN_TURNS = 2;
    private static final int MAX_TURNS = 9;

    private final Position usual;
    private final double randomShare;
    private final PlayGenerator generator = new PlayGenerator();

    Starts(Position usual, double randomShare) {
        this.usual = usual;
        this.randomShare = randomShare;
    }

    /** The start of a game. */
    Position choose(Dice dice) {
        if (randomShare == 0 || dice.below(PARTS) >= randomShare * PARTS) {
            return usual;
        }
        int[] planes = usual.toPlanes();
        int turns = MIN_TURNS + dice.below(MAX_TURNS - MIN_TURNS + 1);
        for (int t = 0; t < turns; t++) {
            Roll roll = dice.next();
            int chosen = dice.below(generator.generate(planes, 0, roll.high(), roll.low()));
            int at = chosen * Planes.STRIDE;
            if ((Planes.occupied(generator.results(), at) & Planes.ON_BOARD) == 0) {
                return usual;
            }
            Planes.copySwapped(generator.results(), at, planes, 0);
        }
        return Position.ofPlanes(planes, 0);
    }
}
