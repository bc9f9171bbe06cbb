package org.pipwright.cli.report;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import org.pipwright.charts.DrawnSvg;
import org.pipwright.engine.text.Printable;

/** A dot a player, with a bar of two standard errors to each side, best at the top. */
public final class RatingsChart {
    private static final int WIDTH = 640;
    private static final int ROW = 34;
    private static final int FRAME = 96;
    private static final Color INK = new Color(0x33, 0x3a, 0x44);
    private static final Color GRID = new Color(0xdd, 0xdd, 0xd8);
    private static final Color DOT = new Color(0x1f, 0x4e, 0x79);

    private RatingsChart() {}

    /**
     * One player.
     *
     * @param name what to call it
     * @param points its rating
     * @param error its standard error
     */
    public record Row(String name, double points, double error) {}

    /**
     * Draws the chart.
     *
     * @param rows the players, best first
     * @param anchor name of the player whose rating is 0
     * @return the text of an SVG file
     */
    public static String svg(List<Row> rows, String anchor) {
        XYIntervalSeries series = new XYIntervalSeries("rating");
        String[] names = new String[rows.size()];
        for (int i = 0; i < names.length; i++) {
            Row row = rows.get(i);
            int height = names.length - 1 - i;
            names[height] = Printable.of(row.name());
            double reach = 2 * row.error();
            series.add(row.points(), row.points() - reach, row.points() + reach, height, height, height);
        }
        XYIntervalSeriesCollection data = new XYIntervalSeriesCollection();
        data.addSeries(series);
        JFreeChart chart = chart(data, names, anchor);
        int height = FRAME + ROW * names.length;
        return DrawnSvg.file(WIDTH, height, svg -> chart.draw(svg, new Rectangle2D.Double(0, 0, WIDTH, height)));
    }

    private static JFreeChart chart(XYIntervalSeriesCollection data, String[] names, String anchor) {
        NumberAxis points = new NumberAxis("points per game against " + anchor + ", with two standard errors");
        // Else nothing is left between a rating of 0, which the anchor has, and the frame.
        points.setAutoRangeStickyZero(false);
        SymbolAxis players = new SymbolAxis(null, names);
        players.setGridBandsVisible(false);
        players.setTickMarksVisible(false);
        players.setAxisLineVisible(false);
        for (NumberAxis axis : List.of(points, players)) {
            axis.setTickLabelFont(new Font(Font.SANS_SERIF, Font.PLAIN, 12));
            axis.setLabelFont(new Font(Font.SANS_SERIF, Font.PLAIN, 12));
            axis.setTickLabelPaint(INK);
            axis.setLabelPaint(INK);
        }
        XYErrorRenderer dots = new XYErrorRenderer();
        dots.setDrawYError(false);
        dots.setSeriesPaint(0, DOT);
        dots.setSeriesShape(0, new Ellipse2D.Double(-4, -4, 8, 8));
        dots.setErrorStroke(new BasicStroke(1.6f));
        dots.setCapLength(6);
        XYPlot plot = new XYPlot(data, points, players, dots);
        plot.setBackgroundPaint(Color.WHITE);
        plot.setDomainGridlinePaint(GRID);
        plot.setRangeGridlinePaint(GRID);
        plot.setOutlineVisible(false);
        JFreeChart chart = new JFreeChart(null, null, plot, false);
        chart.setBackgroundPaint(Color.WHITE);
        chart.setPadding(new RectangleInsets(8, 8, 8, 16));
        return chart;
    }
}
