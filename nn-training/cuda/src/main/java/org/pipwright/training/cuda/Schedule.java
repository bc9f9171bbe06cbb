package org.pipwright.training.cuda;

/** How rate and lambda fall while self-play goes on. */
final class Schedule {
    private final Recipe recipe;
    private final RunClock clock;
    private volatile double began;

    /**
     * A schedule.
     *
     * @param began seconds after which self-play began; not a number if it has not
     */
    Schedule(Recipe recipe, RunClock clock, double began) {
        this.recipe = recipe;
        this.clock = clock;
        this.began = began;
    }

    /** Self-play begins now, if it has not begun before. */
    void begin() {
        if (Double.isNaN(began)) {
            began = clock.seconds();
        }
    }

    double began() {
        return began;
    }

    /** Share of self-play that is over, 0 to 1. */
    double progress() {
        double seconds = clock.seconds();
        double end = 60 * recipe.minutes();
        if (seconds >= end) {
            return 1;
        }
        return Double.isNaN(began) ? 0 : Math.max(0, (seconds - began) / (end - began));
    }

    float rate() {
        return (float) (recipe.rate() * (0.5 + 0.5 * Math.cos(Math.PI * progress())));
    }

    float lambda() {
        return (float) (recipe.lambdaFirst() + (recipe.lambdaLast() - recipe.lambdaFirst()) * progress());
    }
}
