package org.pipwright.training.report;

import java.util.Locale;

/**
 * Figures of a run since the last evaluation, as one line of {@code metrics.csv}.
 *
 * @param games games played in all
 * @param seconds seconds of training in all
 * @param gamesPerSecond over the interval
 * @param contactLoss mean cross-entropy of the contact network over the interval, in nats
 * @param raceLoss the same of the race network
 * @param lambda lambda at the end of the interval
 * @param rate learning rate at the end of the interval
 * @param turns mean length of a game in rolls of both sides
 * @param gammons share of games won as a gammon
 * @param backgammons share of games won as a backgammon
 * @param startEquity equity the contact network gives the side on roll at the start, before its first roll
 * @param evaluation strength against the rival
 */
public record Metrics(
        long games,
        double seconds,
        double gamesPerSecond,
        double contactLoss,
        double raceLoss,
        double lambda,
        double rate,
        double turns,
        double gammons,
        double backgammons,
        double startEquity,
        Evaluation evaluation) {
    /** Head of the file. */
    public static final String HEADER = "games,seconds,games_per_second,contact_loss,race_loss,lambda,rate,turns,"
            + "gammon_share,backgammon_share,start_equity,evaluation_games,points_v_rival,points_v_rival_error";

    /**
     * A line of the file.
     *
     * @return the figures in the order of {@link #HEADER}
     */
    public String toCsv() {
        return String.format(
                Locale.ROOT,
                "%d,%.1f,%.1f,%.5f,%.5f,%.4f,%.3e,%.2f,%.4f,%.4f,%.4f,%d,%.4f,%.4f",
                games,
                seconds,
                gamesPerSecond,
                contactLoss,
                raceLoss,
                lambda,
                rate,
                turns,
                gammons,
                backgammons,
                startEquity,
                evaluation.games(),
                evaluation.points(),
                evaluation.error());
    }

    /**
     * Reads a line of the file.
     *
     * @param line what {@link #toCsv} gave
     * @return its figures
     * @throws NumberFormatException if it is no such line
     */
    public static Metrics ofCsv(String line) {
        String[] f = line.split(",");
        if (f.length != HEADER.split(",").length) {
            throw new NumberFormatException("a line of metrics has " + f.length + " fields");
        }
        return new Metrics(
                Long.parseLong(f[0]),
                Double.parseDouble(f[1]),
                Double.parseDouble(f[2]),
                Double.parseDouble(f[3]),
                Double.parseDouble(f[4]),
                Double.parseDouble(f[5]),
                Double.parseDouble(f[6]),
                Double.parseDouble(f[7]),
                Double.parseDouble(f[8]),
                Double.parseDouble(f[9]),
                Double.parseDouble(f[10]),
                new Evaluation(Integer.parseInt(f[11]), Double.parseDouble(f[12]), Double.parseDouble(f[13])));
    }
}
