package org.pipwright.bench.cube;

import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;

/** Positions of games of a net against itself, without lookahead: one at a random turn of each game. */
final class DrawnPositions {
    private static final int LAST_TURN = 60;

    private final Player player;
    private final long seed;
    private long game;

    DrawnPositions(PositionEvaluator evaluator, long seed) {
        player = new EvaluatingPlayer(evaluator);
        this.seed = seed;
    }

    /** The next; from games that are over by then there is none. */
    Position next() {
        Position[] found = {null};
        while (found[0] == null) {
            Dice dice = Dice.ofGame(seed, game++);
            int wanted = 2 + dice.below(LAST_TURN);
            int[] turn = {0};
            new GameLoop()
                    .play(
                            Position.start(),
                            dice.opening(),
                            player,
                            player,
                            dice,
                            dice,
                            (planes, roll, legal, chosen) -> {
                                if (turn[0]++ == wanted) {
                                    found[0] = Position.ofPlanes(planes, 0);
                                }
                            });
        }
        return found[0];
    }
}
