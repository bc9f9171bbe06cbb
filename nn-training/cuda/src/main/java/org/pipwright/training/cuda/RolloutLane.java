package org.pipwright.training.cuda;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import org.pipwright.engine.evaluation.Horizon;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.training.device.RolledGame;
import org.pipwright.training.device.RolledGames;
import org.pipwright.training.device.RolloutRules;

/** Games that are rolled out together: while they are on the accelerator, other lanes make their plays. Serves one thread. */
final class RolloutLane {
    /** A position with few plays, for places that are left over. */
    private static final int[] IDLE = PositionText.parse("1@1 / 1@1").toPlanes();

    private static final int TASK = 64;

    private final Accelerator accelerator;
    private final RolloutRules rules;
    private final ThreadLocal<Horizon> horizons;
    private final LaneJudge judge;

    /** Held while the accelerator computes. Games are given and taken by who holds their own lock, meanwhile. */
    private final ReentrantLock turn;

    /** What was answered before the first roll of games that begin alike. */
    private final Map<Opening, LaneAnswer> openings;

    private final int[] planes;
    private final ArrayDeque<RollingGame> waiting = new ArrayDeque<>();
    private final List<RollingGame> asked = new ArrayList<>();

    /** Games some of whose positions found no room; they are the first to be asked about again. */
    private final Set<RollingGame> unanswered = ConcurrentHashMap.newKeySet();

    private final RollingGame.Watch watch;

    /** A start and the first roll. */
    record Opening(Position start, int roll) {}

    RolloutLane(
            Accelerator accelerator,
            RolloutRules rules,
            ThreadLocal<Horizon> horizons,
            ReentrantLock turn,
            Map<Opening, LaneAnswer> openings,
            RollingGame.Watch watch) {
        this.accelerator = accelerator;
        this.rules = rules;
        this.horizons = horizons;
        this.turn = turn;
        this.openings = openings;
        this.watch = watch;
        judge = accelerator.lane();
        planes = new int[8 * judge.plays().positions];
    }

    /** Equities by lookahead. */
    double[] lookahead(List<Position> positions) {
        double[] equities = new double[positions.size()];
        int room = judge.plays().positions;
        ArrayDeque<Integer> left =
                new ArrayDeque<>(IntStream.range(0, positions.size()).boxed().toList());
        while (!left.isEmpty()) {
            List<Integer> now = new ArrayList<>();
            while (now.size() < room && !left.isEmpty()) {
                positions.get(left.peek()).copyTo(planes, 8 * now.size());
                judge.plays().rolls.putInt(4 * now.size(), 0);
                now.add(left.remove());
            }
            look(now.size());
            for (int i = 0; i < now.size(); i++) {
                if (judge.plays().leftOut(i)) {
                    left.add(now.get(i));
                } else {
                    equities[now.get(i)] = LaneAnswer.expected(judge.plays(), i);
                }
            }
        }
        return equities;
    }

    /** Asks about the first so many positions. */
    private void look(int count) {
        for (int i = count; i < judge.plays().positions; i++) {
            System.arraycopy(IDLE, 0, planes, 8 * i, 8);
            judge.plays().rolls.putInt(4 * i, 0);
        }
        judge.plays().generate(planes);
        judge.upload();
        turn.lock();
        try {
            judge.judge();
            accelerator.await();
        } finally {
            turn.unlock();
        }
    }

    /** Plays until there are no more games, or another lane has failed. */
    void play(RolledGames games, BooleanSupplier failed) throws InterruptedException {
        while (!failed.getAsBoolean()) {
            int count = fill(games);
            if (count > 0) {
                look(count);
                advance();
                take(games);
            } else if (isDone(games)) {
                return;
            } else {
                // Others will have games when theirs are over.
                TimeUnit.MILLISECONDS.sleep(1);
            }
        }
    }

    private boolean isDone(RolledGames games) {
        synchronized (games) {
            return games.done();
        }
    }

    /** Gathers positions from games under way and new ones; how many. */
    private int fill(RolledGames games) {
        int count = 0;
        for (RollingGame next = next(games); next != null; next = next(games)) {
            if (count + next.unknown() > judge.plays().positions) {
                waiting.addFirst(next);
                break;
            }
            next.ask(planes, judge.plays(), count);
            count += next.unknown();
            asked.add(next);
        }
        return count;
    }

    /** A game that has something to ask, or null. */
    private RollingGame next(RolledGames games) {
        if (!waiting.isEmpty()) {
            return waiting.poll();
        }
        synchronized (games) {
            for (Optional<RolledGame> order = games.next(); order.isPresent(); order = games.next()) {
                RollingGame game = begin(order.get());
                if (!game.over()) {
                    return game;
                }
                games.ended(game.order(), game.value());
            }
            return null;
        }
    }

    private RollingGame begin(RolledGame order) {
        RollingGame game = new RollingGame(order, rules, watch);
        game.begin(horizons.get());
        if (!game.over()) {
            LaneAnswer answer = openings.get(opening(game));
            if (answer != null) {
                game.begun(answer, horizons.get());
            }
        }
        return game;
    }

    private static Opening opening(RollingGame game) {
        return new Opening(game.order().start(), game.roll().index());
    }

    private void advance() {
        int tasks = (asked.size() + TASK - 1) / TASK;
        IntStream.range(0, tasks).parallel().forEach(task -> {
            for (RollingGame game : asked.subList(task * TASK, Math.min(asked.size(), (task + 1) * TASK))) {
                if (!game.hasAnswers(judge.plays())) {
                    unanswered.add(game);
                    continue;
                }
                Opening opening = game.first() ? opening(game) : null;
                LaneAnswer answer = game.answered(judge.plays(), horizons.get());
                if (opening != null) {
                    openings.putIfAbsent(opening, answer);
                }
            }
        });
    }

    private void take(RolledGames games) {
        synchronized (games) {
            for (RollingGame game : asked) {
                if (game.over()) {
                    games.ended(game.order(), game.value());
                } else if (unanswered.contains(game)) {
                    waiting.addFirst(game);
                } else {
                    waiting.add(game);
                }
            }
        }
        asked.clear();
        unanswered.clear();
    }
}
