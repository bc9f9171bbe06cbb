package org.pipwright.training.run;

import org.pipwright.training.report.Evaluation;
import org.pipwright.training.report.Metrics;

/** Sums over the rounds since the last evaluation. */
final class Tally {
    long games;
    private long turns;
    private double gammons;
    private double backgammons;
    private double contactLoss;
    private double raceLoss;
    private double seconds;

    void add(Round round, int played, Learners.Losses losses, double took) {
        games += played;
        turns += round.turns;
        gammons += round.gammons;
        backgammons += round.backgammons;
        contactLoss += losses.contact() * played;
        raceLoss += losses.race() * played;
        seconds += took;
    }

    Metrics metrics(
            long allGames, double allSeconds, double lambda, double rate, double startEquity, Evaluation evaluation) {
        double n = Math.max(1, games);
        return new Metrics(
                allGames,
                allSeconds,
                seconds == 0 ? 0 : games / seconds,
                contactLoss / n,
                raceLoss / n,
                lambda,
                rate,
                turns / n,
                gammons / n,
                backgammons / n,
                startEquity,
                evaluation);
    }
}
