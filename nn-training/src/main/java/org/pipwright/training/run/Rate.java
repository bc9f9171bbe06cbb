package org.pipwright.training.run;

/** Games per second, smoothed over about the last twenty rounds. */
final class Rate {
    private long before;
    private double games;
    private double seconds;

    Rate(long games) {
        before = games;
    }

    double of(long now, double took) {
        games = 0.95 * games + (now - before);
        seconds = 0.95 * seconds + took;
        before = now;
        return games / seconds;
    }
}
