package org.pipwright.engine.rollout;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.Function;
import java.util.function.Supplier;
import org.pipwright.engine.files.WorkFile;

/**
 * Has rounds of {@value RolloutSettings#ROUND} trials of every candidate played until there are enough of them or the
 * listener stops it, adds them up and keeps a file up to date. What comes out does not depend on who plays.
 */
final class Rounds {
    private final Players players;
    private final RolloutSettings settings;
    private final Candidates candidates;

    Rounds(Players players, RolloutSettings settings, Candidates candidates) {
        this.players = players;
        this.settings = settings;
        this.candidates = candidates;
    }

    /**
     * Plays the rounds that are missing.
     *
     * @param identity all that decides the numbers, one thing a line
     * @param file where to go on from and what to keep up to date
     * @param report makes the standings
     * @param listener told of them after each round
     * @return the standings at the end
     * @throws CancellationException if it is stopped during the first round
     */
    RolloutReport run(
            List<String> identity, WorkFile file, Function<Moments, RolloutReport> report, RolloutListener listener) {
        file.require(MomentsText.KIND);
        Moments moments = MomentsText.read(file, identity, candidates.count(), candidates.series());
        if (!settings.luckAdjusted()) {
            moments.unsure(candidates.others());
        }
        Supplier<List<String>> lines = () -> MomentsText.lines(moments);
        // At once, so that a file that cannot be written is told before the work and not after it.
        file.begin(identity, lines);
        if (!enough(moments, report)) {
            players.rounds(
                    candidates,
                    moments.trials(),
                    settings.trials(),
                    results -> {
                        add(results, moments);
                        file.keep(identity, lines);
                        return listener.round(report.apply(moments)) && !enough(moments, report);
                    },
                    listener::stopped);
        }
        if (moments.trials() == 0) {
            throw new CancellationException("stopped before the first " + RolloutSettings.ROUND + " games were over");
        }
        file.end(identity, lines);
        return report.apply(moments);
    }

    private boolean enough(Moments moments, Function<Moments, RolloutReport> report) {
        return moments.trials() >= settings.trials()
                || moments.trials() > 0
                        && settings.sure() > 0
                        && report.apply(moments).clear();
    }

    /** Trials are added up in their own order, whoever played them: means of doubles depend on it. */
    private void add(double[] results, Moments moments) {
        for (int i = 0; i < RolloutSettings.ROUND; i++) {
            int pair = Strata.pair(settings.seed(), moments.trials());
            moments.add(results, i * candidates.series(), candidates.stride(), pair);
        }
    }
}
