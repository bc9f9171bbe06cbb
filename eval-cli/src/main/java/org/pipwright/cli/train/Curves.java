package org.pipwright.cli.train;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import org.jfree.chart.ChartFactory;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import org.pipwright.charts.DrawnSvg;
import org.pipwright.training.report.Chart;
import org.pipwright.training.report.Chart.Curve;
import org.pipwright.training.report.Chart.Point;

/** Line charts as SVG. */
final class Curves {
    private static final int WIDTH = 460;
    private static final int HEIGHT = 260;
    private static final double MIN_RANGE = 0.01;
    private static final Color INK = new Color(0x33, 0x3a, 0x44);
    private static final Color GRID = new Color(0xdd, 0xdd, 0xd8);

    /** Tones that differ in lightness too, for eyes that tell hues apart badly. */
    private static final List<Color> TONES = List.of(
            new Color(0x1f, 0x4e, 0x79),
            new Color(0xc7, 0x7d, 0x2b),
            new Color(0x7a, 0x9e, 0x7e),
            new Color(0xa8, 0x55, 0x6f));

    private Curves() {}

    /**
     * Draws a chart.
     *
     * @param chart what to draw
     * @return an SVG element
     */
    static String svg(Chart chart) {
        XYIntervalSeriesCollection data = new XYIntervalSeriesCollection();
        chart.curves().forEach(curve -> data.addSeries(series(curve)));
        JFreeChart drawn = ChartFactory.createXYLineChart(chart.title(), chart.xLabel(), null, data);
        style(drawn, chart.curves());
        String prefix = chart.title().replaceAll("\\W", "");
        return DrawnSvg.element(
                WIDTH, HEIGHT, prefix, svg -> drawn.draw(svg, new Rectangle2D.Double(0, 0, WIDTH, HEIGHT)));
    }

    private static XYIntervalSeries series(Curve curve) {
        XYIntervalSeries series = new XYIntervalSeries(curve.name(), false, true);
        for (Point point : curve.points()) {
            // Bars cannot be drawn where nothing was measured, nor where there were too few games for an error.
            double error = Double.isFinite(point.error()) ? point.error() : 0;
            if (!Double.isNaN(point.y())) {
                series.add(point.x(), point.x(), point.x(), point.y(), point.y() - error, point.y() + error);
            }
        }
        return series;
    }

    private static double[] each(Curve curve, ToDoubleFunction<Point> value) {
        return curve.points().stream().mapToDouble(value).toArray();
    }

    private static void style(JFreeChart chart, List<Curve> curves) {
        chart.setBackgroundPaint(Color.WHITE);
        chart.getTitle().setFont(new Font(Font.SANS_SERIF, Font.BOLD, 13));
        chart.getTitle().setPaint(INK);
        if (curves.size() == 1) {
            chart.removeLegend();
        } else {
            chart.getLegend().setItemFont(new Font(Font.SANS_SERIF, Font.PLAIN, 11));
        }
        XYPlot plot = chart.getXYPlot();
        plot.setBackgroundPaint(Color.WHITE);
        plot.setDomainGridlinePaint(GRID);
        plot.setRangeGridlinePaint(GRID);
        plot.setOutlineVisible(false);
        XYErrorRenderer lines = new XYErrorRenderer();
        lines.setDefaultLinesVisible(true);
        lines.setDefaultShapesVisible(onlyPoints(curves));
        lines.setDrawXError(false);
        lines.setDrawYError(
                curves.stream().anyMatch(curve -> curve.points().stream().anyMatch(p -> p.error() > 0)));
        lines.setErrorStroke(new BasicStroke(0.8f));
        for (int c = 0; c < curves.size(); c++) {
            lines.setSeriesPaint(c, TONES.get(c % TONES.size()));
            lines.setSeriesStroke(c, new BasicStroke(1.8f));
        }
        plot.setRenderer(lines);
        style((NumberAxis) plot.getDomainAxis(), all(curves, Point::x));
        style((NumberAxis) plot.getRangeAxis(), all(curves, Point::y));
    }

    private static DoubleStream all(List<Curve> curves, ToDoubleFunction<Point> value) {
        return curves.stream().flatMapToDouble(curve -> Arrays.stream(each(curve, value)));
    }

    private static void style(NumberAxis axis, DoubleStream values) {
        double largest = values.map(Math::abs).filter(Double::isFinite).max().orElse(0);
        axis.setAutoRangeIncludesZero(false);
        // Else an axis with a single value on it is labelled with differences far behind the point.
        axis.setAutoRangeMinimumSize(Math.max(MIN_RANGE, largest / 20));
        axis.setTickLabelFont(new Font(Font.SANS_SERIF, Font.PLAIN, 10));
        axis.setLabelFont(new Font(Font.SANS_SERIF, Font.PLAIN, 11));
        axis.setTickLabelPaint(INK);
    }

    /** A single point makes no line: it is shown as a mark. */
    private static boolean onlyPoints(List<Curve> curves) {
        return curves.stream().allMatch(curve -> curve.points().size() < 3);
    }
}
