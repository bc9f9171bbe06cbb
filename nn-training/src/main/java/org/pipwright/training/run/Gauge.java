package org.pipwright.training.run;

import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.match.PipLeader;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.match.TurnListener;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.training.parallel.Workers;

/**
 * Points per game against the baseline {@code pips}, in paired games: each sequence of dice is played twice with sides
 * swapped.
 *
 * @param games games played
 * @param points mean points per game of the model
 * @param error standard error of the mean, over pairs
 */
public record Gauge(int games, double points, double error) {
    /** Dice apart from those of self-play. */
    private static final long SEED = 0x6A09E667F3BCC908L;

    static Gauge of(Model model, Judges judges, Position start, int games, Workers workers) {
        int pairs = Math.max(1, games / 2);
        double[] means = new double[pairs];
        GameLoop[] loops = new GameLoop[workers.count()];
        Player[] players = new Player[workers.count()];
        for (int w = 0; w < loops.length; w++) {
            loops[w] = new GameLoop();
            players[w] = new EvaluatingPlayer(judges.of(model).evaluator());
        }
        workers.run(pairs, (worker, pair) -> {
            int first = play(loops[worker], start, players[worker], new PipLeader(), pair);
            int second = play(loops[worker], start, new PipLeader(), players[worker], pair);
            means[pair] = (first - second) / 2.0;
        });
        return of(means);
    }

    private static int play(GameLoop loop, Position start, Player first, Player second, int pair) {
        Dice dice = Dice.ofGame(SEED, pair);
        return loop.play(start, dice.opening(), first, second, dice, Dice.ofGame(~SEED, pair), TurnListener.NONE);
    }

    private static Gauge of(double[] means) {
        double sum = 0;
        double squares = 0;
        for (double mean : means) {
            sum += mean;
            squares += mean * mean;
        }
        double mean = sum / means.length;
        double variance = Math.max(0, squares / means.length - mean * mean);
        return new Gauge(2 * means.length, mean, Math.sqrt(variance / means.length));
    }
}
