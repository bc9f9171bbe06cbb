package org.pipwright.training.report;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import org.jfree.chart.ChartFactory;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.DefaultXYDataset;
import org.jfree.svg.SVGGraphics2D;
import org.jfree.svg.ViewBox;

/** Line charts as SVG. */
public final class Curves {
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
     * One line of a chart.
     *
     * @param name what the legend calls it
     * @param x where its points lie, left to right
     * @param y how high they are; as many
     */
    public record Curve(String name, double[] x, double[] y) {}

    /**
     * Draws a chart.
     *
     * @param title above it; unlike that of any other chart on the page
     * @param xLabel below the axis
     * @param curves its lines; a legend names them if there are several
     * @return an SVG element
     */
    public static String svg(String title, String xLabel, Curve... curves) {
        DefaultXYDataset data = new DefaultXYDataset();
        for (Curve curve : curves) {
            data.addSeries(curve.name(), new double[][] {curve.x(), curve.y()});
        }
        JFreeChart chart = ChartFactory.createXYLineChart(title, xLabel, null, data);
        style(chart, curves);
        SVGGraphics2D svg = new SVGGraphics2D(WIDTH, HEIGHT);
        // Several charts share one page: their clip paths must not share names.
        svg.setDefsKeyPrefix(title.replaceAll("\\W", ""));
        chart.draw(svg, new Rectangle2D.Double(0, 0, WIDTH, HEIGHT));
        return svg.getSVGElement(null, false, new ViewBox(0, 0, WIDTH, HEIGHT), null, null);
    }

    private static void style(JFreeChart chart, Curve... curves) {
        chart.setBackgroundPaint(Color.WHITE);
        chart.getTitle().setFont(new Font(Font.SANS_SERIF, Font.BOLD, 13));
        chart.getTitle().setPaint(INK);
        if (curves.length == 1) {
            chart.removeLegend();
        } else {
            chart.getLegend().setItemFont(new Font(Font.SANS_SERIF, Font.PLAIN, 11));
        }
        XYPlot plot = chart.getXYPlot();
        plot.setBackgroundPaint(Color.WHITE);
        plot.setDomainGridlinePaint(GRID);
        plot.setRangeGridlinePaint(GRID);
        plot.setOutlineVisible(false);
        XYLineAndShapeRenderer lines = new XYLineAndShapeRenderer(true, onlyPoints(curves));
        for (int c = 0; c < curves.length; c++) {
            lines.setSeriesPaint(c, TONES.get(c % TONES.size()));
            lines.setSeriesStroke(c, new BasicStroke(1.8f));
        }
        plot.setRenderer(lines);
        style((NumberAxis) plot.getDomainAxis(), Arrays.stream(curves).flatMapToDouble(c -> Arrays.stream(c.x())));
        style((NumberAxis) plot.getRangeAxis(), Arrays.stream(curves).flatMapToDouble(c -> Arrays.stream(c.y())));
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
    private static boolean onlyPoints(Curve... curves) {
        return Arrays.stream(curves).allMatch(curve -> curve.x().length < 3);
    }
}
