package org.pipwright.cli.train;

import java.util.List;
import java.util.Optional;
import org.pipwright.cli.page.Pages;
import org.pipwright.training.report.ReportPage;
import org.pipwright.training.report.RunReport;

/** The report of a run as one HTML file that needs nothing else. */
public final class RunPage implements ReportPage {
    /** A page for any run. */
    public RunPage() {}

    /**
     * What the template shows.
     *
     * @param report the report
     * @param charts its charts as SVG elements; none if this Java cannot draw them
     */
    public record Shown(RunReport report, List<String> charts) {}

    @Override
    public Optional<String> of(RunReport report) {
        return Optional.of(Pages.of("run.jte", new Shown(report, charts(report))));
    }

    /** A Java without fonts cannot draw, and says so with many kinds of errors; that must not end a run of hours. */
    private static List<String> charts(RunReport report) {
        try {
            return report.charts().stream().map(Curves::svg).toList();
        } catch (RuntimeException | Error e) {
            return List.of();
        }
    }
}
