package org.pipwright.training.run;

import org.pipwright.training.settings.TrainingSettings;

/** How lambda and the learning rate fall over a run: constant at first, then linear. */
final class Schedule {
    private final TrainingSettings settings;

    Schedule(TrainingSettings settings) {
        this.settings = settings;
    }

    /** Share of the run that is done, 0 to 1; a run limited by games and by time is as far as the farther of the two. */
    double progress(long games, double seconds) {
        long maxGames = settings.limits().games();
        double maxSeconds = 60 * settings.limits().minutes();
        double byGames = maxGames == 0 ? 0 : (double) games / maxGames;
        double byTime = maxSeconds == 0 ? 0 : seconds / maxSeconds;
        return Math.min(1, Math.max(byGames, byTime));
    }

    float lambda(double progress) {
        return (float) settings.learning().lambda().at(progress);
    }

    double rate(double progress) {
        return settings.learning().rate().at(progress);
    }
}
