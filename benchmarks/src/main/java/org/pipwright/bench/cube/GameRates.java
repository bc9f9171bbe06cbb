package org.pipwright.bench.cube;

import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;

/** Plays cubeless games of an evaluator against itself and counts what match tables need. Serves one thread. */
final class GameRates {
    /** Chances between which a cube decision is near. */
    private static final double LOW = 0.2;

    private static final double HIGH = 0.8;

    /** After one or two rolls a side can double for the first time. */
    private static final int FIRST_ROLLS = 2;

    private final PositionEvaluator evaluator;
    private final float[] chances = new float[Outcomes.COUNT];
    private long games;
    private long gammons;
    private long backgammons;
    private long turns;
    private long steps;
    private double squares;
    private double firstSquares;
    private double lastWin;
    private int turn;

    GameRates(PositionEvaluator evaluator) {
        this.evaluator = evaluator;
    }

    /** Plays games number 0 to count - 1 of a seed. */
    void play(long seed, int count) {
        GameLoop loop = new GameLoop();
        Player player = new EvaluatingPlayer(evaluator);
        for (int game = 0; game < count; game++) {
            Dice dice = Dice.ofGame(seed, game);
            turn = 0;
            int points = loop.play(
                    Position.start(),
                    dice.opening(),
                    player,
                    player,
                    dice,
                    dice,
                    (planes, roll, legal, chosen) -> look(planes));
            games++;
            turns += loop.turns();
            gammons += Math.abs(points) == 2 ? 1 : 0;
            backgammons += Math.abs(points) == 3 ? 1 : 0;
        }
    }

    /** Before each roll: how far the chance to win of the same side has moved since the roll before. */
    private void look(int[] planes) {
        evaluator.evaluate(planes, 0, chances, 0);
        double win = chances[0] + chances[1] + chances[2];
        if (turn > 0) {
            double moved = 1 - win - lastWin;
            if (turn <= FIRST_ROLLS) {
                firstSquares += moved * moved;
            }
            if (lastWin >= LOW && lastWin <= HIGH) {
                squares += moved * moved;
                steps++;
            }
        }
        lastWin = win;
        turn++;
    }

    long games() {
        return games;
    }

    double gammons() {
        return (double) gammons / games;
    }

    double backgammons() {
        return (double) backgammons / games;
    }

    double turnsPerGame() {
        return (double) turns / games;
    }

    /** Root mean square change of the chance to win in one roll, from chances between 20 and 80 %. */
    double deviation() {
        return Math.sqrt(squares / steps);
    }

    /** The same for the first two rolls of a game. */
    double firstDeviation() {
        return Math.sqrt(firstSquares / (FIRST_ROLLS * games));
    }
}
