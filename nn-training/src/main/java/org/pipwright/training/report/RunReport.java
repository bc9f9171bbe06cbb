package org.pipwright.training.report;

import java.util.List;
import java.util.Optional;

/**
 * The report of a run, as data: whoever started the run makes a page of it.
 *
 * @param summary the run in a sentence
 * @param charts its learning curves
 * @param openings the plays chosen for opening rolls, if the game has openings that people know
 * @param settings the settings as a file has them
 */
public record RunReport(Summary summary, List<Chart> charts, Optional<OpeningTable> openings, String settings) {
    /**
     * A report.
     *
     * @param summary the run in a sentence
     * @param charts its learning curves
     * @param openings the plays chosen for opening rolls, if the game has openings that people know
     * @param settings the settings as a file has them
     */
    public RunReport {
        charts = List.copyOf(charts);
    }

    /**
     * A sentence about a run: what it has done, against whom it was measured, and how it did.
     *
     * @param done what comes before the rival's name
     * @param rival the rival's name
     * @param strength what comes after it
     */
    public record Summary(String done, String rival, String strength) {}

    /**
     * A length of time in words.
     *
     * @param seconds the time
     * @return for instance {@code 50 s}, {@code 12 min} or {@code 3 h 5 min}
     */
    public static String duration(double seconds) {
        if (seconds < 60) {
            return Math.round(seconds) + " s";
        }
        long minutes = Math.round(seconds / 60);
        return minutes < 60 ? minutes + " min" : minutes / 60 + " h " + minutes % 60 + " min";
    }
}
