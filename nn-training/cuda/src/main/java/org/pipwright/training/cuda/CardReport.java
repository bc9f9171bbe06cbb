package org.pipwright.training.cuda;

import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.pipwright.training.report.Curves;
import org.pipwright.training.report.Curves.Curve;
import org.pipwright.training.report.ReportPage;

/** A run on a card for people. */
final class CardReport {
    private CardReport() {}

    /** The page, from at least one line of figures. */
    static String html(List<Figures> lines, List<String> names, String rival, String settings) {
        Figures last = lines.get(lines.size() - 1);
        StringBuilder summary = new StringBuilder(String.format(
                Locale.ROOT,
                "%,.1f million targets in %s; points per game against the net <i>%s</i>:",
                last.targets() / 1e6,
                ReportPage.duration(last.seconds()),
                rival.replace("&", "&amp;").replace("<", "&lt;")));
        for (int k = 0; k < names.size(); k++) {
            Figures.OfNet net = last.nets().get(k);
            if (!Double.isNaN(net.points())) {
                summary.append(
                        String.format(Locale.ROOT, " %s %+.4f ± %.4f;", names.get(k), net.points(), net.pointsError()));
            }
        }
        summary.append(String.format(Locale.ROOT, " %,d pairs of games each.", last.pairs()));
        return ReportPage.html(summary.toString(), () -> charts(lines, names), "", settings);
    }

    private static String charts(List<Figures> lines, List<String> names) {
        return String.join(
                "\n",
                Curves.svg("points per game against the rival", "minutes", each(lines, names, Figures.OfNet::points)),
                Curves.svg("cross-entropy (nats)", "minutes", each(lines, names, Figures.OfNet::entropy)),
                Curves.svg("error of equity (points)", "minutes", each(lines, names, Figures.OfNet::error)),
                Curves.svg("targets per second", "minutes", one(lines, Figures::speed)),
                Curves.svg("replies per roll judged by the deep net", "minutes", one(lines, Figures::kept)));
    }

    private static double[] minutes(List<Figures> lines) {
        return lines.stream().mapToDouble(line -> line.seconds() / 60).toArray();
    }

    private static Curve one(List<Figures> lines, ToDoubleFunction<Figures> value) {
        return new Curve("", minutes(lines), lines.stream().mapToDouble(value).toArray());
    }

    private static Curve[] each(List<Figures> lines, List<String> names, ToDoubleFunction<Figures.OfNet> value) {
        return IntStream.range(0, names.size())
                .mapToObj(k -> new Curve(
                        names.get(k),
                        minutes(lines),
                        lines.stream()
                                .mapToDouble(
                                        line -> value.applyAsDouble(line.nets().get(k)))
                                .toArray()))
                .toArray(Curve[]::new);
    }
}
