package org.pipwright.bench.strength;

import java.awt.Color;
import java.awt.Font;
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
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import org.pipwright.bench.Picture;
import org.pipwright.bench.strength.Frontier.Timed;

/** Strength over time, every net a dot with two standard errors; those on the frontier are joined. */
final class FrontierPicture {
    private static final int WIDTH = 760;
    private static final int HEIGHT = 500;
    private static final Color HELD = PictureStyle.FIRST;
    private static final Color BEATEN = PictureStyle.SECOND;

    private FrontierPicture() {}

    static Picture of(Frontier frontier, String title) {
        return PictureStyle.picture(chart(frontier, title), WIDTH, HEIGHT);
    }

    private static JFreeChart chart(Frontier frontier, String title) {
        XYPlot plot = PictureStyle.plot(data(frontier), time(frontier), new NumberAxis("points a game"), dots());
        for (Timed net : frontier.nets()) {
            plot.addAnnotation(name(net, frontier.holds(net)));
        }
        return PictureStyle.chart(title, plot);
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
            PictureStyle.add(series, net.millis(), net.stand());
        }
        return series;
    }

    private static XYErrorRenderer dots() {
        XYErrorRenderer dots = PictureStyle.dots(HELD, BEATEN);
        dots.setSeriesLinesVisible(0, true);
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
        return axis;
    }
}
