package org.pipwright.training.report;

import java.util.List;

/**
 * A line chart.
 *
 * @param title above it; unlike that of any other chart of the report
 * @param xLabel below the axis
 * @param curves its lines; a legend names them if there are several
 */
public record Chart(String title, String xLabel, List<Curve> curves) {
    /**
     * A chart.
     *
     * @param title above it; unlike that of any other chart of the report
     * @param xLabel below the axis
     * @param curves its lines; a legend names them if there are several
     */
    public Chart {
        curves = List.copyOf(curves);
    }

    /**
     * One line of a chart.
     *
     * @param name what the legend calls it
     * @param points its points, left to right; a height may be NaN where nothing was measured
     */
    public record Curve(String name, List<Point> points) {
        /**
         * A line.
         *
         * @param name what the legend calls it
         * @param points its points, left to right
         */
        public Curve {
            points = List.copyOf(points);
        }
    }

    /**
     * A point of a line.
     *
     * @param x how far right
     * @param y how high
     * @param error standard error of the height; 0 where none is known
     */
    public record Point(double x, double y, double error) {
        /**
         * A point without an error.
         *
         * @param x how far right
         * @param y how high
         */
        public Point(double x, double y) {
            this(x, y, 0);
        }
    }
}
