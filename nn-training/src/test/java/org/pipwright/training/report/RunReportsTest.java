package org.pipwright.training.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;

/** What a report of a run holds. */
class RunReportsTest {
    @TempDir
    Path folder;

    private static Metrics line(long games, double seconds, double points) {
        return new Metrics(
                games, seconds, 1666, 0.75, 0.5, 0.7, 0.002, 52, 0.25, 0.01, 0.07, new Evaluation(1000, points, 0.03));
    }

    private RunReport report(TrainingSettings settings) throws IOException {
        OpeningChoices openings = OpeningChoices.open(folder.resolve("openings.csv"), 0);
        return RunReports.of(List.of(line(2_000_000, 1200, 1.5), line(4_000_000, 2400, 2.7871)), openings, settings);
    }

    @Test
    void theLastFiguresAreSummedUp() throws IOException {
        RunReport report = report(TrainingSettings.defaults().with(Setting.SEED, "77"));
        assertEquals(
                new RunReport.Summary(
                        "4,000,000 games in 40 min; against the baseline",
                        "pips",
                        "+2.787 ± 0.030 points per game (1,000 paired games)."
                                + " Whether it still rises is told from 6 evaluations on."),
                report.summary());
        assertTrue(report.settings().contains("seed = 77"));
        Chart first = report.charts().get(0);
        assertEquals("games (millions)", first.xLabel());
        assertEquals(
                List.of(new Chart.Point(2, 1.5, 0.03), new Chart.Point(4, 2.7871, 0.03)),
                first.curves().get(0).points());
    }

    /** Nobody knows the openings of a reduced game. */
    @Test
    void onlyTheFullGameHasOpenings() throws IOException {
        assertTrue(report(TrainingSettings.defaults()).openings().isPresent());
        assertTrue(report(TrainingSettings.defaults().with(Setting.CHECKERS, "3"))
                .openings()
                .isEmpty());
    }
}
