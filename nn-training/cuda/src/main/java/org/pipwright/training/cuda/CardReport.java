package org.pipwright.training.cuda;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.pipwright.training.report.Chart;
import org.pipwright.training.report.Chart.Curve;
import org.pipwright.training.report.Chart.Point;
import org.pipwright.training.report.OpeningChoices;
import org.pipwright.training.report.RunReport;
import org.pipwright.training.report.Trend;

/** A run on a card for people. */
final class CardReport {
    private CardReport() {}

    /** The report, from at least one line of figures. */
    static RunReport of(
            List<Figures> lines, List<String> names, OpeningChoices openings, String rival, String settings) {
        Figures last = lines.get(lines.size() - 1);
        String done = String.format(
                Locale.ROOT,
                "%,.1f million targets in %s; points per game against the net",
                last.targets() / 1e6,
                RunReport.duration(last.seconds()));
        StringBuilder strength = new StringBuilder("in ")
                .append(String.format(Locale.ROOT, "%,d", last.pairs()))
                .append(" pairs of games each:");
        StringBuilder trends = new StringBuilder();
        String before = " ";
        for (int k = 0; k < names.size(); k++) {
            Figures.OfNet net = last.nets().get(k);
            if (!Double.isNaN(net.points())) {
                strength.append(before)
                        .append(String.format(
                                Locale.ROOT, "%s %+.4f ± %.4f", names.get(k), net.points(), net.pointsError()));
                before = "; ";
                trends.append(' ').append(names.get(k)).append(": ").append(trend(lines, k));
            }
        }
        return new RunReport(
                new RunReport.Summary(
                        done, rival, strength.append('.').append(trends).toString()),
                charts(lines, names),
                Optional.of(openings.table()),
                settings);
    }

    private static List<Chart> charts(List<Figures> lines, List<String> names) {
        return List.of(
                new Chart("points per game against the rival", "minutes", strengths(lines, names)),
                new Chart("cross-entropy (nats)", "minutes", each(lines, names, Figures.OfNet::entropy)),
                new Chart("error of equity (points)", "minutes", each(lines, names, Figures.OfNet::error)),
                new Chart("targets per second", "minutes", List.of(curve("", lines, Figures::speed))),
                new Chart(
                        "replies per roll judged by the deep net",
                        "minutes",
                        List.of(curve("", lines, Figures::kept))));
    }

    private static String trend(List<Figures> lines, int net) {
        return Trend.of(lines.stream()
                        .map(line -> new Trend.Stand(
                                line.targets(),
                                line.nets().get(net).points(),
                                line.nets().get(net).pointsError()))
                        .toList())
                .sentence("targets");
    }

    private static List<Curve> strengths(List<Figures> lines, List<String> names) {
        return IntStream.range(0, names.size())
                .mapToObj(k -> new Curve(
                        names.get(k),
                        lines.stream()
                                .map(line -> new Point(
                                        line.seconds() / 60,
                                        line.nets().get(k).points(),
                                        line.nets().get(k).pointsError()))
                                .toList()))
                .toList();
    }

    private static List<Curve> each(List<Figures> lines, List<String> names, ToDoubleFunction<Figures.OfNet> value) {
        return IntStream.range(0, names.size())
                .mapToObj(k -> curve(
                        names.get(k),
                        lines,
                        line -> value.applyAsDouble(line.nets().get(k))))
                .toList();
    }

    private static Curve curve(String name, List<Figures> lines, ToDoubleFunction<Figures> value) {
        return new Curve(
                name,
                lines.stream()
                        .map(line -> new Point(line.seconds() / 60, value.applyAsDouble(line)))
                        .toList());
    }
}
