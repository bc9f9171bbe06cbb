package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;

/** Held, then linear to the end. */
class ScheduleTest {
    private static final TrainingSettings SETTINGS = TrainingSettings.defaults()
            .with(Setting.GAMES, "1000")
            .with(Setting.MINUTES, "2")
            .with(Setting.CONSTANT_SHARE, "0.25")
            .with(Setting.LAMBDA_FIRST, "0.7")
            .with(Setting.LAMBDA_LAST, "0.1")
            .with(Setting.RATE_FIRST, "0.004")
            .with(Setting.RATE_LAST, "0");

    @Test
    void progressIsTheFartherOfTheTwo() {
        Schedule schedule = new Schedule(SETTINGS);
        assertEquals(0, schedule.progress(0, 0));
        assertEquals(0.5, schedule.progress(500, 12));
        assertEquals(0.75, schedule.progress(500, 90));
        assertEquals(1, schedule.progress(1200, 0));
        assertEquals(1, schedule.progress(0, 1000));
        Schedule byGames = new Schedule(SETTINGS.with(Setting.MINUTES, "0"));
        assertEquals(0.5, byGames.progress(500, 1e9));
        Schedule byTime = new Schedule(SETTINGS.with(Setting.GAMES, "0"));
        assertEquals(0.5, byTime.progress(1 << 30, 60));
    }

    @Test
    void heldThenLinear() {
        Schedule schedule = new Schedule(SETTINGS);
        for (double progress : new double[] {0, 0.1, 0.25}) {
            assertEquals(0.7f, schedule.lambda(progress));
            assertEquals(0.004, schedule.rate(progress));
        }
        assertEquals(0.4, schedule.lambda(0.625), 1e-6);
        assertEquals(0.002, schedule.rate(0.625), 1e-9);
        assertEquals(0.1, schedule.lambda(1), 1e-6);
        assertEquals(0, schedule.rate(1), 1e-9);
    }
}
