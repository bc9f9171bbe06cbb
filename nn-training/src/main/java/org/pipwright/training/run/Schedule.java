package org.pipwright.training.run;

import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;

/** How lambda and the learning rate fall over a run: held at first, then linear. */
final class Schedule {
    private final TrainingSettings settings;

    Schedule(TrainingSettings settings) {
        this.settings = settings;
    }

    /** Share of the run that is done, 0 to 1; a run limited by games and by time is as far as the farther of the two. */
    double progress(long games, double seconds) {
        long mostGames = settings.whole(Setting.GAMES);
        double mostSeconds = 60 * settings.number(Setting.MINUTES);
        double byGames = mostGames == 0 ? 0 : (double) games / mostGames;
        double byTime = mostSeconds == 0 ? 0 : seconds / mostSeconds;
        return Math.min(1, Math.max(byGames, byTime));
    }

    float lambda(double progress) {
        return (float) between(Setting.LAMBDA_FIRST, Setting.LAMBDA_LAST, progress);
    }

    double rate(double progress) {
        return between(Setting.RATE_FIRST, Setting.RATE_LAST, progress);
    }

    private double between(Setting first, Setting last, double progress) {
        double hold = settings.number(Setting.HOLD);
        double fallen = Math.max(0, (progress - hold) / (1 - hold));
        double from = settings.number(first);
        return from + (settings.number(last) - from) * fallen;
    }
}
