package org.pipwright.engine.rollout;

import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.parallel.Crew;

/** Threads of this process, which play a round together. */
final class CrewOfPlayers implements Players {
    private final Crew<Trial> crew;

    CrewOfPlayers(int threads, Supplier<Trial> trials) {
        crew = new Crew<>(threads, trials);
    }

    @Override
    public void rounds(
            Candidates candidates, int first, int trials, Predicate<double[]> taken, BooleanSupplier stopped) {
        boolean more = true;
        for (int from = first; more && from < trials; from += RolloutSettings.ROUND) {
            double[] results = new double[candidates.numbers()];
            try {
                play(candidates, from, stopped, results);
            } catch (CancellationException e) {
                // What is known are whole rounds.
                return;
            }
            more = taken.test(results);
        }
    }

    private void play(Candidates candidates, int first, BooleanSupplier stopped, double[] results) {
        int count = candidates.count();
        crew.run(count * RolloutSettings.ROUND, (trial, task) -> {
            int candidate = task % count;
            int inRound = task / count;
            int at = candidate * candidates.stride() + inRound * candidates.series();
            candidates.play(trial, candidate, first + inRound, stopped, results, at);
        });
    }

    @Override
    public CubeTerms terms(Stakes stakes) {
        return crew.workers().get(0).terms(stakes);
    }

    @Override
    public void close() {
        crew.close();
    }
}
