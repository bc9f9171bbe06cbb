package org.pipwright.training.report;

import java.util.Optional;

/** Makes the page that is kept beside a run's figures, so that training itself need not know about pages. */
@FunctionalInterface
public interface ReportPage {
    /** No page: the figures are all that is kept. */
    ReportPage NONE = report -> Optional.empty();

    /**
     * The page of a report.
     *
     * @param report the report
     * @return the text of an HTML file, or empty if none is wanted
     */
    Optional<String> of(RunReport report);
}
