package org.pipwright.bench.strength;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.LogAxis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import org.pipwright.bench.Picture;
import org.pipwright.bench.strength.Frontier.Timed;

/** Strength over time, every net a dot with two standard errors; those on the frontier are joined. */
final class FrontierPicture {
    private static final int WIDTH = 760;
    private static final int HEIGHT = 500;
    private static final Color INK = new Color(0x33, 0x3a, 0x44);
    private static final Color GRID = new Color(0xe4, 0xe4, 0xdf);
    private static final Color HELD = new Color(0x1f, 0x4e, 0x79);
    private static final Color BEATEN = new Color(0xb0, 0x6a, 0x2c);

    private FrontierPicture() {}

    static Picture of(Frontier frontier, String title) {
        JFreeChart chart = chart(frontier, title);
        return new Picture(
                WIDTH, HEIGHT, graphics -> chart.draw(graphics, new Rectangle2D.Double(0, 0, WIDTH, HEIGHT)));
    }

    private static JFreeChart chart(Frontier frontier, String title) {
        XYPlot plot = new XYPlot(data(frontier), time(frontier), styled(new NumberAxis("points a game")), dots());
        plot.setBackgroundPaint(Color.WHITE);
        plot.setDomainGridlinePaint(GRID);
        plot.setRangeGridlinePaint(GRID);
        plot.setOutlineVisible(false);
        for (Timed net : frontier.nets()) {
            plot.addAnnotation(name(net, frontier.holds(net)));
        }
        JFreeChart chart = new JFreeChart(title, new Font(Font.SANS_SERIF, Font.BOLD, 15), plot, false);
        chart.getTitle().setPaint(INK);
        chart.setBackgroundPaint(Color.WHITE);
        chart.setPadding(new RectangleInsets(8, 8, 8, 24));
        return chart;
    }

    /** First the nets on the frontier, then the others. */
    private static XYIntervalSeriesCollection data(Frontier frontier) {
        XYIntervalSeriesCollection data = new XYIntervalSeriesCollection();
        List<Timed> beaten = new ArrayList<>(frontier.nets());
        List<Timed> held = frontier.nets().stream().filter(frontier::holds).toList();
        beaten.removeAll(held);
        data.addSeries(series("frontier", held));
        data.addSeries(series("others", beaten));
        return data;
    }

    private static XYIntervalSeries series(String name, List<Timed> nets) {
        XYIntervalSeries series = new XYIntervalSeries(name);
        for (Timed net : nets) {
            double x = net.millis();
            double y = net.stand().points();
            double twice = 2 * net.stand().error();
            series.add(x, x, x, y, y - twice, y + twice);
        }
        return series;
    }

    private static XYErrorRenderer dots() {
        XYErrorRenderer dots = new XYErrorRenderer();
        dots.setDrawXError(false);
        dots.setErrorStroke(new BasicStroke(1.2f));
        dots.setCapLength(5);
        Shape dot = new Ellipse2D.Double(-4, -4, 8, 8);
        List<Color> colors = List.of(HELD, BEATEN);
        for (int i = 0; i < colors.size(); i++) {
            dots.setSeriesPaint(i, colors.get(i));
            dots.setSeriesShape(i, dot);
        }
        dots.setSeriesLinesVisible(0, true);
        dots.setSeriesStroke(0, new BasicStroke(1.4f));
        return dots;
    }

    /** Beside the frontier below its line, beside the others above. */
    private static XYTextAnnotation name(Timed net, boolean held) {
        XYTextAnnotation name = new XYTextAnnotation(
                "  " + net.stand().name() + "  ", net.millis(), net.stand().points());
        name.setTextAnchor(held ? TextAnchor.BOTTOM_RIGHT : TextAnchor.TOP_LEFT);
        name.setFont(new Font(Font.SANS_SERIF, held ? Font.BOLD : Font.PLAIN, 12));
        name.setPaint(held ? HELD : BEATEN);
        return name;
    }

    /** Half as far again to both sides. */
    private static ValueAxis time(Frontier frontier) {
        LogAxis axis = new LogAxis("milliseconds a decision, one core");
        List<Timed> nets = frontier.nets();
        axis.setRange(nets.get(0).millis() / 2, 1.5 * nets.get(nets.size() - 1).millis());
        axis.setTickUnit(new NumberTickUnit(0.5));
        axis.setNumberFormatOverride(new DecimalFormat("0.0##", DecimalFormatSymbols.getInstance(Locale.ROOT)));
        return styled(axis);
    }

    private static <A extends ValueAxis> A styled(A axis) {
        axis.setTickLabelFont(new Font(Font.SANS_SERIF, Font.PLAIN, 12));
        axis.setLabelFont(new Font(Font.SANS_SERIF, Font.PLAIN, 12));
        axis.setTickLabelPaint(INK);
        axis.setLabelPaint(INK);
        return axis;
    }
}
