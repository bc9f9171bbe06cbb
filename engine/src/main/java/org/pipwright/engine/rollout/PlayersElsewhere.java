package org.pipwright.engine.rollout;

import java.io.Serializable;
import java.util.Iterator;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.parallel.Shared;
import org.pipwright.engine.parallel.Trade;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.search.Judging;

/** Players on other machines: several rounds are under way at a time. */
final class PlayersElsewhere implements Players {
    /** Trials of a task, a divisor of a round's: few, since one with lookahead may take many seconds. */
    private static final int SLICE = 6;

    private static final int SLICES = RolloutSettings.ROUND / SLICE;

    private final Shared<? extends Judging> judging;
    private final RolloutSettings settings;
    private final Workforce workforce;

    PlayersElsewhere(Shared<? extends Judging> judging, RolloutSettings settings, Workforce workforce) {
        this.judging = judging;
        this.settings = settings;
        this.workforce = workforce;
    }

    /** Some trials of a candidate, from a number on. */
    private record Slice(int candidate, int first) implements Serializable {}

    /** How to play them: one number after another of each trial. */
    private record Playing(Shared<? extends Judging> judging, RolloutSettings settings, Candidates candidates)
            implements Trade<Slice, double[]> {
        @Override
        public Worker<Slice, double[]> hire() {
            Judging known = judging.get();
            Trial trial = new Trial(known.judgement(), known.terms(), settings);
            return (slice, stopped) -> {
                double[] results = new double[SLICE * candidates.series()];
                for (int i = 0; i < SLICE; i++) {
                    int at = i * candidates.series();
                    candidates.play(trial, slice.candidate, slice.first + i, stopped, results, at);
                }
                return results;
            };
        }
    }

    @Override
    public void rounds(
            Candidates candidates, int first, int trials, Predicate<double[]> taken, BooleanSupplier stopped) {
        int ofRound = candidates.count() * SLICES;
        int rounds = (trials - first) / RolloutSettings.ROUND;
        Iterator<Slice> slices = IntStream.range(0, rounds)
                .boxed()
                .flatMap(round -> IntStream.range(0, ofRound)
                        .mapToObj(
                                i -> new Slice(i / SLICES, first + round * RolloutSettings.ROUND + i % SLICES * SLICE)))
                .iterator();
        workforce.inOrder(
                new Playing(judging, settings, candidates), slices, new Gathering(candidates, taken), stopped);
    }

    /** Puts rounds together: a candidate's trials lie behind each other, and candidates do. */
    private static final class Gathering implements Predicate<double[]> {
        private final Candidates candidates;
        private final Predicate<double[]> taken;
        private double[] round;
        private int filled;

        Gathering(Candidates candidates, Predicate<double[]> taken) {
            this.candidates = candidates;
            this.taken = taken;
        }

        @Override
        public boolean test(double[] slice) {
            round = filled == 0 ? new double[candidates.numbers()] : round;
            System.arraycopy(slice, 0, round, filled, slice.length);
            filled += slice.length;
            if (filled < round.length) {
                return true;
            }
            filled = 0;
            return taken.test(round);
        }
    }

    @Override
    public CubeTerms terms(Stakes stakes) {
        return judging.get().terms().apply(stakes);
    }

    @Override
    public void close() {
        // Who opened the workforce closes it.
    }
}
