package org.pipwright.engine.rollout;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.Function;
import org.pipwright.engine.parallel.Crew;

/**
 * Plays rounds of {@value RolloutSettings#ROUND} trials of every candidate until there are enough of them or the listener
 * stops it, adds them up and keeps a file up to date. What comes out does not depend on the number of threads.
 */
final class Rounds {
    private final Crew<Trial> crew;
    private final RolloutSettings settings;
    private final Playing playing;

    /** How a trial is played. */
    @FunctionalInterface
    interface Playing {
        /**
         * Plays one trial of one candidate.
         *
         * @param trial who plays it
         * @param candidate index of the candidate
         * @param number of the trial, from 0
         * @param results where to write its numbers
         * @param at index of the first
         * @throws CancellationException if it was told to stop
         */
        void play(Trial trial, int candidate, int number, double[] results, int at);
    }

    Rounds(Crew<Trial> crew, RolloutSettings settings, Playing playing) {
        this.crew = crew;
        this.settings = settings;
        this.playing = playing;
    }

    /**
     * Plays the rounds that are missing.
     *
     * @param identity all that decides the numbers, one thing a line
     * @param candidates how many there are
     * @param series numbers of a trial
     * @param file where to go on from and what to keep up to date
     * @param report makes the standings
     * @param listener told of them after each round
     * @return the standings at the end
     * @throws CancellationException if it is stopped during the first round
     */
    RolloutReport run(
            List<String> identity,
            int candidates,
            int series,
            RolloutFile file,
            Function<Moments, RolloutReport> report,
            RolloutListener listener) {
        Moments moments = file.read(identity, candidates, series);
        // At once, so that a file that cannot be written is told before the work and not after it.
        file.begin(identity, moments);
        boolean goOn = true;
        while (goOn && !enough(moments, report) && playRound(moments, candidates, series)) {
            file.keep(identity, moments);
            goOn = listener.round(report.apply(moments));
        }
        if (moments.trials() == 0) {
            throw new CancellationException("stopped before the first " + RolloutSettings.ROUND + " games were over");
        }
        file.end(identity, moments);
        return report.apply(moments);
    }

    private boolean enough(Moments moments, Function<Moments, RolloutReport> report) {
        return moments.trials() >= settings.trials()
                || moments.trials() > 0
                        && settings.sure() > 0
                        && report.apply(moments).clear();
    }

    /**
     * Trials in any order by any thread, but added up in their own order: means of doubles depend on it.
     *
     * @return false if it was stopped, and nothing added
     */
    private boolean playRound(Moments moments, int candidates, int series) {
        int first = moments.trials();
        int stride = RolloutSettings.ROUND * series;
        double[] results = new double[candidates * stride];
        try {
            crew.run(candidates * RolloutSettings.ROUND, (trial, task) -> {
                int candidate = task % candidates;
                int inRound = task / candidates;
                playing.play(trial, candidate, first + inRound, results, candidate * stride + inRound * series);
            });
        } catch (CancellationException e) {
            // What is known are whole rounds.
            return false;
        }
        for (int i = 0; i < RolloutSettings.ROUND; i++) {
            moments.add(results, i * series, stride, Strata.pair(settings.seed(), first + i));
        }
        return true;
    }
}
