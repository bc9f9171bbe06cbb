package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rollout.TrialDice;
import org.pipwright.engine.statistics.RunningMean;
import org.pipwright.training.device.RolledGame;
import org.pipwright.training.device.RolledGames;

/** Trials of one start, at most so many under way. */
final class Trials implements RolledGames {
    final Position start;
    final int trials;
    final int atOnce;
    final Map<Object, Double> values = new HashMap<>();
    int given;

    Trials(Position start, int trials, int atOnce) {
        this.start = start;
        this.trials = trials;
        this.atOnce = atOnce;
    }

    @Override
    public Optional<RolledGame> next() {
        if (given == trials || given - values.size() >= atOnce) {
            return Optional.empty();
        }
        return Optional.of(new RolledGame(start, new TrialDice(11, given), given++));
    }

    @Override
    public void ended(RolledGame game, double equity) {
        assertEquals(null, values.put(game.tag(), equity), "ended twice");
    }

    @Override
    public boolean done() {
        return values.size() == trials;
    }

    RunningMean mean() {
        RunningMean mean = RunningMean.NONE;
        for (double value : values.values()) {
            mean = mean.plus(value);
        }
        return mean;
    }
}
