package org.pipwright.training.cuda;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import org.pipwright.engine.evaluation.Horizon;
import org.pipwright.engine.position.Position;
import org.pipwright.training.device.DeviceAgreement;
import org.pipwright.training.device.DeviceRollouts;
import org.pipwright.training.device.RolledGames;
import org.pipwright.training.device.RolloutRules;

/** Rolls games out on an accelerator, in lanes that take their turns on it. */
final class LockstepRollouts implements DeviceRollouts {
    private final Accelerator accelerator;
    private final RolloutRules rules;
    private final MadeMoves moves = new MadeMoves();
    private final List<RolloutLane> lanes = new ArrayList<>();
    private volatile Throwable failure;

    LockstepRollouts(Function<Recipe, Accelerator> accelerators, RolloutRules rules) {
        this(accelerators, rules, null);
    }

    /** The same, with somebody to watch instead of counting what agrees. */
    LockstepRollouts(Function<Recipe, Accelerator> accelerators, RolloutRules rules, RollingGame.Watch watch) {
        this.rules = rules;
        GameNets.requireFits(rules.deep());
        GameNets.requireFits(rules.quick());
        ResidualShape deep = GameNets.shape(rules.deep());
        ResidualShape quick = GameNets.shape(rules.quick());
        accelerator = accelerators.apply(Recipe.ofGames(deep, quick, rules.gamesAtOnce(), rules.keepMargin()));
        GameNets.add(rules.deep(), accelerator);
        GameNets.add(rules.quick(), accelerator);
        ThreadLocal<Horizon> horizons = ThreadLocal.withInitial(rules.horizons());
        ReentrantLock turn = new ReentrantLock(true);
        Map<RolloutLane.Opening, LaneAnswer> openings = new ConcurrentHashMap<>();
        for (int i = 0; i < rules.lanes(); i++) {
            lanes.add(new RolloutLane(accelerator, rules, horizons, turn, openings, watch == null ? moves : watch));
        }
    }

    @Override
    public String description() {
        return accelerator.description();
    }

    @Override
    public double[] lookahead(List<Position> positions) {
        return lanes.get(0).lookahead(positions);
    }

    @Override
    public void play(RolledGames games) {
        List<Thread> threads = lanes.stream()
                .map(lane -> new Thread(() -> play(lane, games), "pipwright-lane"))
                .toList();
        threads.forEach(Thread::start);
        try {
            for (Thread thread : threads) {
                thread.join();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while rolling out", e);
        }
        if (failure != null) {
            throw new IllegalStateException("a lane of rollouts failed: " + failure.getMessage(), failure);
        }
    }

    @Override
    public DeviceAgreement agreement() {
        return moves.compare(rules);
    }

    private void play(RolloutLane lane, RolledGames games) {
        try {
            accelerator.use();
            lane.play(games, () -> failure != null);
        } catch (RuntimeException | Error | InterruptedException e) {
            failure = e;
        }
    }
}
