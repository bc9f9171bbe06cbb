package org.pipwright.training.cuda;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;

/**
 * Pairs of games between a network of the accelerator and a model on this machine, many games at once. Both make the play
 * after which the equity is best, without lookahead. Both games of a pair have the same dice, with the sides exchanged.
 */
final class LockstepDuel {
    private static final int TASK = 64;

    /** Results a game on average, at most. */
    private static final int ROOM = 80;

    /** Room besides, since the mean of few games may be far from the usual. */
    private static final int SPARE = 1 << 12;

    private final Model rival;
    private final int games;
    private final ResultJudge judge;
    private final BooleanSupplier stop;
    private final AtomicInteger used = new AtomicInteger();

    private final int[] planes;
    private final int[] first;
    private final int[] counts;
    private final boolean[] netToPlay;
    private final int[] number;
    private final Dice[] dice;
    private final boolean[] begun;
    private final ThreadLocal<Hands> hands = ThreadLocal.withInitial(Hands::new);

    private final class Hands {
        final PlayGenerator generator = new PlayGenerator();
        final PositionEvaluator evaluator = new NetworkEvaluator(rival);
        float[] chances = new float[6 * 4096];
    }

    /**
     * What came of it.
     *
     * @param pairs pairs of games
     * @param mean points a game of the network
     * @param error standard error of the mean
     */
    record Result(int pairs, double mean, double error) {}

    LockstepDuel(Model rival, int games, Accelerator accelerator, BooleanSupplier stop) {
        this.rival = rival;
        this.games = games;
        this.stop = stop;
        judge = accelerator.results(ROOM * games + SPARE);
        planes = new int[8 * games];
        first = new int[games];
        counts = new int[games];
        netToPlay = new boolean[games];
        number = new int[games];
        dice = new Dice[games];
        begun = new boolean[games];
    }

    /** Plays so many pairs; empty if told to stop meanwhile. */
    Optional<Result> play(int net, int pairs, long seed) {
        int total = 2 * pairs;
        int[] points = new int[total];
        AtomicInteger next = new AtomicInteger();
        for (int slot = 0; slot < games; slot++) {
            begin(slot, next.getAndIncrement(), total, seed);
        }
        int tasks = (games + TASK - 1) / TASK;
        while (IntStream.range(0, games).anyMatch(slot -> number[slot] >= 0)) {
            if (stop.getAsBoolean()) {
                return Optional.empty();
            }
            used.set(0);
            IntStream.range(0, tasks).parallel().forEach(task -> {
                for (int slot = task * TASK; slot < Math.min(games, (task + 1) * TASK); slot++) {
                    if (number[slot] >= 0) {
                        prepare(slot);
                    }
                }
            });
            int rows = used.get();
            if (rows > 0) {
                judge.judge(net, rows);
            }
            IntStream.range(0, tasks).parallel().forEach(task -> {
                for (int slot = task * TASK; slot < Math.min(games, (task + 1) * TASK); slot++) {
                    if (number[slot] >= 0) {
                        finishTurn(slot, points, next, total, seed);
                    }
                }
            });
        }
        return Optional.of(result(points, pairs));
    }

    private static Result result(int[] points, int pairs) {
        double sum = 0;
        double squares = 0;
        for (int pair = 0; pair < pairs; pair++) {
            double mean = (points[2 * pair] + points[2 * pair + 1]) / 2.0;
            sum += mean;
            squares += mean * mean;
        }
        double mean = sum / pairs;
        return new Result(pairs, mean, Math.sqrt((squares / pairs - mean * mean) / (pairs - 1)));
    }

    private void begin(int slot, int game, int total, long seed) {
        if (game >= total) {
            number[slot] = -1;
            return;
        }
        number[slot] = game;
        dice[slot] = Dice.ofGame(seed, game / 2);
        netToPlay[slot] = game % 2 == 0;
        begun[slot] = false;
        Position.start().copyTo(planes, 8 * slot);
    }

    /** Throws the dice; a turn of the rival is played at once, the results of a turn of the network are collected. */
    private void prepare(int slot) {
        Hands mine = hands.get();
        Roll roll = begun[slot] ? dice[slot].next() : dice[slot].opening();
        begun[slot] = true;
        int count = mine.generator.generate(planes, 8 * slot, roll.high(), roll.low());
        if (netToPlay[slot]) {
            int at = used.getAndAdd(count);
            if (at + count > ROOM * games + SPARE) {
                throw new IllegalStateException("more plays than there is room for");
            }
            judge.results().put(8 * at, mine.generator.results(), 0, 8 * count);
            first[slot] = at;
            counts[slot] = count;
            return;
        }
        if (mine.chances.length < 6 * count) {
            mine.chances = new float[12 * count];
        }
        int best = 0;
        if (count > 1) {
            mine.evaluator.evaluateResults(planes, 8 * slot, mine.generator.results(), count, mine.chances);
            for (int k = 1; k < count; k++) {
                if (Chances.equity(mine.chances, 6 * k) > Chances.equity(mine.chances, 6 * best)) {
                    best = k;
                }
            }
        }
        System.arraycopy(mine.generator.results(), 8 * best, planes, 8 * slot, 8);
    }

    private void finishTurn(int slot, int[] points, AtomicInteger next, int total, long seed) {
        if (netToPlay[slot]) {
            int best = first[slot];
            for (int k = first[slot] + 1; k < first[slot] + counts[slot]; k++) {
                if (judge.equity(k) > judge.equity(best)) {
                    best = k;
                }
            }
            judge.results().get(8 * best, planes, 8 * slot, 8);
        }
        if ((Planes.occupied(planes, 8 * slot) & Planes.ON_BOARD) == 0) {
            int won = GameResult.of(planes, 8 * slot + Planes.SIDE).points();
            points[number[slot]] = netToPlay[slot] ? won : -won;
            begin(slot, next.getAndIncrement(), total, seed);
            return;
        }
        for (int k = 8 * slot; k < 8 * slot + 4; k++) {
            int mover = planes[k];
            planes[k] = planes[k + 4];
            planes[k + 4] = mover;
        }
        netToPlay[slot] = !netToPlay[slot];
    }
}
