package org.pipwright.training.cuda;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Figures of a run, as one line of {@code metrics.csv}.
 *
 * @param seconds seconds of training in all
 * @param targets targets made in all
 * @param games games of self-play finished in all
 * @param speed targets a second since the last line
 * @param lambda lambda now
 * @param rate learning rate now
 * @param kept replies a roll that the deep network judged
 * @param pairs pairs of games in which strength was evaluated
 * @param nets one entry a network
 */
record Figures(
        double seconds,
        long targets,
        long games,
        double speed,
        double lambda,
        double rate,
        double kept,
        int pairs,
        List<OfNet> nets) {
    private static final String HEADER =
            "seconds,targets,games,targets_per_second,lambda,rate,kept_replies,evaluation_pairs";
    private static final int COMMON = 8;
    private static final int OF_NET = 4;

    /**
     * Figures of a network.
     *
     * @param entropy cross-entropy with its targets, in nats
     * @param error root of the mean squared error of equity, in points
     * @param points points a game against the rival; not a number if that was not evaluated
     * @param pointsError its standard error
     */
    record OfNet(double entropy, double error, double points, double pointsError) {}

    static String header(List<String> names) {
        StringBuilder text = new StringBuilder(HEADER);
        for (String name : names) {
            text.append(String.format(
                    Locale.ROOT, ",%1$s_cross_entropy,%1$s_equity_error,%1$s_points,%1$s_points_error", name));
        }
        return text.toString();
    }

    String toCsv() {
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT,
                "%.1f,%d,%d,%.0f,%.4f,%.3e,%.3f,%d",
                seconds,
                targets,
                games,
                speed,
                lambda,
                rate,
                kept,
                pairs));
        for (OfNet net : nets) {
            text.append(String.format(
                    Locale.ROOT, ",%.5f,%.5f,%.4f,%.4f", net.entropy(), net.error(), net.points(), net.pointsError()));
        }
        return text.toString();
    }

    /** Reads a line; a {@link NumberFormatException} says that it is none. */
    static Figures ofCsv(String line, int nets) {
        String[] f = line.split(",");
        if (f.length != COMMON + OF_NET * nets) {
            throw new NumberFormatException("a line of figures has " + f.length + " fields");
        }
        List<OfNet> all = new ArrayList<>();
        for (int at = COMMON; at < f.length; at += OF_NET) {
            all.add(new OfNet(
                    Double.parseDouble(f[at]),
                    Double.parseDouble(f[at + 1]),
                    Double.parseDouble(f[at + 2]),
                    Double.parseDouble(f[at + 3])));
        }
        return new Figures(
                Double.parseDouble(f[0]),
                Long.parseLong(f[1]),
                Long.parseLong(f[2]),
                Double.parseDouble(f[3]),
                Double.parseDouble(f[4]),
                Double.parseDouble(f[5]),
                Double.parseDouble(f[6]),
                Integer.parseInt(f[7]),
                List.copyOf(all));
    }
}
