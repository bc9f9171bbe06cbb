package org.pipwright.bench.calibration;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Ellipse2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.LogAxis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.chart.renderer.xy.XYItemRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.DefaultXYDataset;
import org.jfree.data.xy.XYDataset;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;

/** One curve: observed against predicted, and below it their difference, in which one point can be seen. */
final class CurveChart {
    static final int WIDTH = 400;
    static final int HEIGHT = 430;

    /** Positions without which a range shows little but its error. */
    static final int MIN = 100;

    static final Color INK = new Color(0x33, 0x3a, 0x44);
    private static final Color GRID = new Color(0xe4, 0xe4, 0xdf);
    private static final Color DOT = new Color(0x1f, 0x4e, 0x79);
    private static final Color EQUAL = new Color(0x9a, 0x9d, 0xa2);
    private static final Color BAND = new Color(0xe9, 0xf0, 0xe6);
    /** Where the axis of rare chances begins, in per cent. */
    private static final double MIN_RARE = 0.02;

    /** Room for dots at the ends of the axis, in per cent of it. */
    private static final double EDGE = 2;

    private static final int MIN_REACH = 2;
    private static final int MAX_REACH = 10;

    private final Curve curve;
    private final List<Bin> bins;
    /** Rare chances span orders of magnitude. */
    private final boolean rare;

    private CurveChart(Curve curve) {
        this.curve = curve;
        this.bins = curve.bins().stream().filter(bin -> bin.count() >= MIN).toList();
        this.rare = curve.chance().scale() == Chance.Scale.BACKGAMMONS;
    }

    static JFreeChart of(Curve curve) {
        return new CurveChart(curve).chart();
    }

    private JFreeChart chart() {
        CombinedDomainXYPlot both = new CombinedDomainXYPlot(axis("predicted, %"));
        both.setGap(10);
        both.add(reliability(), 5);
        both.add(difference(), 4);
        JFreeChart chart =
                new JFreeChart(curve.chance().words(), new Font(Font.SANS_SERIF, Font.BOLD, 14), both, false);
        chart.getTitle().setPaint(INK);
        chart.setBackgroundPaint(Color.WHITE);
        chart.setPadding(new RectangleInsets(4, 4, 4, 12));
        return chart;
    }

    private double most() {
        return bins.isEmpty() ? 1 : bins.get(bins.size() - 1).high();
    }

    /** For predictions and what was observed alike. */
    private ValueAxis axis(String label) {
        if (rare) {
            LogAxis axis = new LogAxis(label);
            axis.setRange(MIN_RARE, 100 * most());
            // Powers of ten, written as people do.
            axis.setTickUnit(new NumberTickUnit(1));
            axis.setNumberFormatOverride(new DecimalFormat("0.###", DecimalFormatSymbols.getInstance(Locale.ROOT)));
            return styled(axis);
        }
        NumberAxis axis = new NumberAxis(label);
        axis.setRange(-EDGE * most(), (100 + EDGE) * most());
        axis.setTickUnit(new NumberTickUnit(most() > 0.5 ? 20 : 10));
        return styled(axis);
    }

    private static <A extends ValueAxis> A styled(A axis) {
        axis.setTickLabelFont(new Font(Font.SANS_SERIF, Font.PLAIN, 11));
        axis.setLabelFont(new Font(Font.SANS_SERIF, Font.PLAIN, 11));
        axis.setTickLabelPaint(INK);
        axis.setLabelPaint(INK);
        axis.setAxisLineVisible(false);
        return axis;
    }

    private XYPlot reliability() {
        DefaultXYDataset data = new DefaultXYDataset();
        double[] ends = {rare ? MIN_RARE : 0, 100 * most()};
        data.addSeries("equal", new double[][] {ends, ends});
        List<Bin> seen =
                bins.stream().filter(bin -> !rare || bin.observed() > 0).toList();
        data.addSeries("observed", new double[][] {
            seen.stream().mapToDouble(bin -> 100 * bin.predicted()).toArray(),
            seen.stream().mapToDouble(bin -> 100 * bin.observed()).toArray()
        });
        XYLineAndShapeRenderer lines = new XYLineAndShapeRenderer(true, true);
        lines.setSeriesShapesVisible(0, false);
        lines.setSeriesPaint(0, EQUAL);
        lines.setSeriesStroke(
                0, new BasicStroke(1.2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_BEVEL, 1, new float[] {5, 4}, 0));
        lines.setSeriesPaint(1, DOT);
        lines.setSeriesStroke(1, new BasicStroke(1.6f));
        lines.setSeriesShape(1, dot());
        XYPlot plot = plot(data, axis(null), lines);
        title(plot, "observed, %", 100 * most());
        return plot;
    }

    private XYPlot difference() {
        XYIntervalSeries series = new XYIntervalSeries("difference");
        double reach = MIN_REACH;
        for (Bin bin : bins) {
            double x = 100 * bin.predicted();
            double y = 100 * bin.difference();
            double twice = 200 * bin.error();
            series.add(x, x, x, y, y - twice, y + twice);
            reach = Math.max(reach, Math.abs(y) + twice);
        }
        XYIntervalSeriesCollection data = new XYIntervalSeriesCollection();
        data.addSeries(series);
        NumberAxis points = styled(new NumberAxis());
        int shown = Math.min(MAX_REACH, (int) Math.ceil(reach));
        points.setRange(-shown, shown);
        points.setTickUnit(new NumberTickUnit(shown > 4 ? 2 : 1));
        XYErrorRenderer bars = new XYErrorRenderer();
        bars.setDrawXError(false);
        bars.setSeriesPaint(0, DOT);
        bars.setSeriesShape(0, dot());
        bars.setErrorStroke(new BasicStroke(1.2f));
        bars.setCapLength(5);
        XYPlot plot = plot(data, points, bars);
        IntervalMarker band = new IntervalMarker(-100 * Calibration.AIM, 100 * Calibration.AIM, BAND);
        band.setAlpha(1);
        plot.addRangeMarker(band, Layer.BACKGROUND);
        plot.addRangeMarker(new ValueMarker(0, EQUAL, new BasicStroke(1)), Layer.BACKGROUND);
        title(plot, "observed less predicted, points", shown);
        return plot;
    }

    /** In the corner and level: it reads better than along the axis. */
    private void title(XYPlot plot, String words, double top) {
        XYTextAnnotation title = new XYTextAnnotation(" " + words, rare ? MIN_RARE : -EDGE * most(), top);
        title.setTextAnchor(TextAnchor.TOP_LEFT);
        title.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, 11));
        title.setPaint(INK);
        plot.addAnnotation(title);
    }

    private static Ellipse2D dot() {
        return new Ellipse2D.Double(-3, -3, 6, 6);
    }

    private static XYPlot plot(XYDataset data, ValueAxis range, XYItemRenderer renderer) {
        XYPlot plot = new XYPlot(data, null, range, renderer);
        plot.setBackgroundPaint(Color.WHITE);
        plot.setDomainGridlinePaint(GRID);
        plot.setRangeGridlinePaint(GRID);
        plot.setDomainGridlineStroke(new BasicStroke(0.8f));
        plot.setRangeGridlineStroke(new BasicStroke(0.8f));
        plot.setOutlineVisible(false);
        return plot;
    }
}
