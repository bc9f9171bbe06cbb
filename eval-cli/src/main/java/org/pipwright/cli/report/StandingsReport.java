package org.pipwright.cli.report;

import java.io.PrintWriter;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.pipwright.cli.duel.Contestant;
import org.pipwright.engine.standings.Match;
import org.pipwright.engine.standings.Ratings;
import org.pipwright.engine.statistics.RunningMean;

/**
 * What {@code standings} has to say.
 *
 * @param players the players
 * @param anchor number of the player whose rating is 0
 * @param seed of the first duel
 * @param matches the duels, in the order they were played
 * @param ratings the fitted ratings; empty if the duels do not connect all players
 * @param plusMinus the sign for errors
 */
public record StandingsReport(
        List<Contestant> players,
        int anchor,
        long seed,
        List<Match> matches,
        Optional<Ratings> ratings,
        String plusMinus) {

    /** Numbers of the players, best first; in the order given if there are no ratings. */
    List<Integer> order() {
        return IntStream.range(0, players.size())
                .boxed()
                .sorted(Comparator.comparing(
                        player -> ratings.map(known -> -known.points(player)).orElse(0.0)))
                .collect(Collectors.toList());
    }

    /**
     * Prints ratings and results.
     *
     * @param out where to
     */
    public void writeText(PrintWriter out) {
        long games = matches.stream().mapToLong(match -> match.tally().games()).sum();
        out.println(
                players.size() + " players, " + matches.size() + " duels, " + games + " games in pairs, seed " + seed);
        out.println();
        if (ratings.isPresent()) {
            writeRatings(out, ratings.get());
        } else {
            out.println("no ratings: the duels played do not connect all players");
        }
        out.println();
        writeResults(out);
    }

    private void writeRatings(PrintWriter out, Ratings known) {
        Table table = new Table("rlrl");
        table.row("", "", "rating", "");
        int place = 1;
        for (int player : order()) {
            table.row(
                    place++,
                    players.get(player).name() + ", " + players.get(player).depth(),
                    player == anchor ? "0" : Numbers.points(known.points(player)),
                    player == anchor ? "by definition" : error(known.error(player)));
        }
        table.print(out);
        out.println();
        out.println("points per game against " + players.get(anchor).name() + "; " + fit(known));
    }

    private static String fit(Ratings known) {
        if (known.freedom() == 0) {
            return "there are as many ratings as results";
        }
        String chi = String.format(
                Locale.ROOT, "chi-squared %.1f where about %d is expected", known.chiSquared(), known.freedom());
        if (known.chiSquared() <= known.freedom()) {
            return chi + ": the results add up";
        }
        double wider = Math.sqrt(known.chiSquared() / known.freedom());
        return chi
                + String.format(
                        Locale.ROOT,
                        ": one number a player does not tell all, so errors are made %.1f times as wide",
                        wider);
    }

    private String error(double error) {
        return String.format(Locale.ROOT, "%s %.4f", plusMinus, error);
    }

    /** Each line has a player's points per game against the others, who stand in the same order. */
    private void writeResults(PrintWriter out) {
        out.println("points per game, line against column:");
        List<Integer> order = order();
        Table table = new Table("rl" + "r".repeat(order.size()));
        Object[] head = new Object[order.size() + 2];
        head[0] = "";
        head[1] = "";
        for (int i = 0; i < order.size(); i++) {
            head[i + 2] = i + 1;
        }
        table.row(head);
        for (int i = 0; i < order.size(); i++) {
            Object[] row = new Object[order.size() + 2];
            row[0] = i + 1;
            row[1] = players.get(order.get(i)).name();
            for (int j = 0; j < order.size(); j++) {
                row[j + 2] = result(order.get(i), order.get(j));
            }
            table.row(row);
        }
        table.print(out);
    }

    private String result(int a, int b) {
        for (Match match : matches) {
            RunningMean points = match.tally().best();
            if (match.a() == a && match.b() == b) {
                return Numbers.points(points.mean());
            }
            if (match.a() == b && match.b() == a) {
                return Numbers.points(-points.mean());
            }
        }
        return "";
    }

    /**
     * Draws the ratings.
     *
     * @return the text of an SVG file
     * @throws java.util.NoSuchElementException if there are no ratings
     */
    public String chart() {
        Ratings known = ratings.orElseThrow();
        List<RatingsChart.Row> rows = order().stream()
                .map(player ->
                        new RatingsChart.Row(players.get(player).name(), known.points(player), known.error(player)))
                .collect(Collectors.toList());
        return RatingsChart.svg(rows, players.get(anchor).name());
    }
}
