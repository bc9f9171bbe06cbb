package org.pipwright.bench.strength;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.XYDataset;
import org.jfree.data.xy.XYIntervalSeries;
import org.pipwright.bench.Picture;

/** How pictures of strength look: dots with their errors on a white ground. */
final class PictureStyle {
    /** What the eye should find first. */
    static final Color FIRST = new Color(0x1f, 0x4e, 0x79);

    /** What it is compared with. */
    static final Color SECOND = new Color(0xb0, 0x6a, 0x2c);

    private static final Color INK = new Color(0x33, 0x3a, 0x44);
    private static final Color GRID = new Color(0xe4, 0xe4, 0xdf);

    private PictureStyle() {}

    static XYPlot plot(XYDataset data, ValueAxis across, ValueAxis up, XYErrorRenderer dots) {
        XYPlot plot = new XYPlot(data, styled(across), styled(up), dots);
        plot.setBackgroundPaint(Color.WHITE);
        plot.setDomainGridlinePaint(GRID);
        plot.setRangeGridlinePaint(GRID);
        plot.setOutlineVisible(false);
        return plot;
    }

    static JFreeChart chart(String title, XYPlot plot) {
        JFreeChart chart = new JFreeChart(title, new Font(Font.SANS_SERIF, Font.BOLD, 15), plot, false);
        chart.getTitle().setPaint(INK);
        chart.setBackgroundPaint(Color.WHITE);
        chart.setPadding(new RectangleInsets(8, 8, 8, 24));
        return chart;
    }

    static Picture picture(JFreeChart chart, int width, int height) {
        return new Picture(
                width, height, graphics -> chart.draw(graphics, new Rectangle2D.Double(0, 0, width, height)));
    }

    /** Dots with bars up and down, a colour a series; lines that join them are thin, where they are shown. */
    static XYErrorRenderer dots(Color... colors) {
        XYErrorRenderer dots = new XYErrorRenderer();
        dots.setDrawXError(false);
        dots.setErrorStroke(new BasicStroke(1.2f));
        dots.setCapLength(5);
        Shape dot = new Ellipse2D.Double(-4, -4, 8, 8);
        for (int i = 0; i < colors.length; i++) {
            dots.setSeriesPaint(i, colors[i]);
            dots.setSeriesShape(i, dot);
            dots.setSeriesStroke(i, new BasicStroke(1.4f));
        }
        return dots;
    }

    /** Adds a net to those drawn, with bars of two standard errors up and down. */
    static void add(XYIntervalSeries series, double across, Stand stand) {
        double twice = 2 * stand.error();
        series.add(across, across, across, stand.points(), stand.points() - twice, stand.points() + twice);
    }

    private static ValueAxis styled(ValueAxis axis) {
        axis.setTickLabelFont(new Font(Font.SANS_SERIF, Font.PLAIN, 12));
        axis.setLabelFont(new Font(Font.SANS_SERIF, Font.PLAIN, 12));
        axis.setTickLabelPaint(INK);
        axis.setLabelPaint(INK);
        return axis;
    }
}
