package org.pipwright.bench.strength;

import java.awt.BasicStroke;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import org.pipwright.bench.Picture;

/** How strong the nets of a run were while it went on: a dot each with two standard errors, and the yardstick as a line. */
final class CurvePicture {
    private static final int WIDTH = 600;
    private static final int HEIGHT = 340;

    private CurvePicture() {}

    /**
     * Draws a run.
     *
     * @param stands its nets, each called by the minutes that the run had trained for
     * @param title what is written above
     * @param yardstick the net that points are won from
     * @throws IllegalArgumentException if a name is no number
     */
    static Picture of(List<Stand> stands, String title, String yardstick) {
        return PictureStyle.picture(chart(stands, title, yardstick), WIDTH, HEIGHT);
    }

    private static JFreeChart chart(List<Stand> stands, String title, String yardstick) {
        XYIntervalSeries series = new XYIntervalSeries("run");
        for (Stand stand : stands) {
            PictureStyle.add(series, minutes(stand), stand);
        }
        XYIntervalSeriesCollection data = new XYIntervalSeriesCollection();
        data.addSeries(series);
        XYErrorRenderer dots = PictureStyle.dots(PictureStyle.FIRST);
        dots.setSeriesLinesVisible(0, true);
        XYPlot plot = PictureStyle.plot(
                data, new NumberAxis("minutes of training"), new NumberAxis("points a game over " + yardstick), dots);
        plot.addRangeMarker(new ValueMarker(0, PictureStyle.SECOND, new BasicStroke(1.2f)));
        return PictureStyle.chart(title, plot);
    }

    private static double minutes(Stand stand) {
        try {
            return Double.parseDouble(stand.name());
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(
                    "'" + stand.name() + "' should be the minutes that the run had trained for");
        }
    }
}
