package org.pipwright.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.review.Decision;
import org.pipwright.engine.review.ReviewedTurn;

/**
 * The first player's chance to win a game, turn by turn, as an SVG drawing. Marks on it lead to the decisions that cost
 * something: a ring for thin, a disc for costly, a diamond for heavy ones; squares are doubles.
 */
final class ReviewCurve {
    private static final double WIDTH = 720;
    private static final double HEIGHT = 260;
    private static final double LEFT = 66;
    private static final double RIGHT = 14;
    private static final double TOP = 12;
    private static final double BOTTOM = 30;

    private final ReviewReport report;
    private final int game;
    private final List<ReviewedTurn> turns;
    private final StringBuilder svg = new StringBuilder();

    private ReviewCurve(ReviewReport report, int game) {
        this.report = report;
        this.game = game;
        turns = report.review().game(game);
    }

    static String of(ReviewReport report, int game) {
        return new ReviewCurve(report, game).draw();
    }

    private String draw() {
        String name = report.heading().name(0);
        svg.append("<svg class=curve viewBox='0 0 720 260' role=group aria-label='")
                .append(Html.escaped("Chance of " + name + " to win game " + (game + 1) + ", turn by turn")
                        .replace("'", "&#39;"))
                .append("'>\n");
        List<double[]> spots = spots();
        area(spots);
        grid();
        line("<polyline class=line points='", spots, "'/>\n");
        turns.forEach(this::marks);
        return svg.append("</svg>\n").toString();
    }

    /** Before each turn, and after the game if it has ended. */
    private List<double[]> spots() {
        List<double[]> spots = new ArrayList<>();
        for (ReviewedTurn turn : turns) {
            spots.add(new double[] {x(turn.moment().turn()), y(ReviewReport.winChance(turn))});
        }
        int points = report.record().games().get(game).points();
        if (points != 0) {
            spots.add(new double[] {x(turns.size()), y(points > 0 ? 1 : 0)});
        }
        return spots;
    }

    private double x(int turn) {
        return LEFT + (WIDTH - LEFT - RIGHT) * turn / Math.max(1, turns.size());
    }

    private static double y(double chance) {
        return TOP + (HEIGHT - TOP - BOTTOM) * (1 - chance);
    }

    /** Between the curve and an even game: dark where the first player leads, light where the second does. */
    private void area(List<double[]> spots) {
        double first = spots.get(0)[0];
        double last = spots.get(spots.size() - 1)[0];
        String ends = number(last) + "," + number(y(0.5)) + " " + number(first) + "," + number(y(0.5));
        svg.append("<clipPath id=up").append(game).append("><rect x=0 y=0 width=720 height=" + number(y(0.5)));
        svg.append("></rect></clipPath><clipPath id=down").append(game).append("><rect x=0 y=" + number(y(0.5)));
        svg.append(" width=720 height=260></rect></clipPath>\n");
        line("<polygon class=ahead clip-path='url(#up" + game + ")' points='", spots, " " + ends + "'/>\n");
        line("<polygon class=behind clip-path='url(#down" + game + ")' points='", spots, " " + ends + "'/>\n");
    }

    private void line(String before, List<double[]> spots, String after) {
        svg.append(before)
                .append(spots.stream()
                        .map(spot -> number(spot[0]) + "," + number(spot[1]))
                        .collect(Collectors.joining(" ")))
                .append(after);
    }

    private void grid() {
        for (int percent = 0; percent <= 100; percent += 25) {
            double at = y(percent / 100.0);
            svg.append("<line class=").append(percent == 50 ? "even" : "grid").append(" x1=66 x2=706 y1=");
            svg.append(number(at)).append(" y2=").append(number(at)).append(" />");
            text(LEFT - 8, at + 4, "end", percent + " %");
        }
        int step = turns.size() > 60 ? 20 : turns.size() > 20 ? 10 : 5;
        for (int turn = step; turn <= turns.size(); turn += step) {
            text(x(turn - 1), HEIGHT - 8, "middle", String.valueOf(turn));
        }
        text(LEFT, HEIGHT - 8, "middle", "turn");
        svg.append('\n');
    }

    private void text(double x, double y, String anchor, String words) {
        svg.append("<text x=").append(number(x)).append(" y=").append(number(y));
        svg.append(" text-anchor=")
                .append(anchor)
                .append('>')
                .append(Html.escaped(words))
                .append("</text>");
    }

    private void marks(ReviewedTurn turn) {
        double x = x(turn.moment().turn());
        double y = y(ReviewReport.winChance(turn));
        if (turn.moment().doubled()) {
            link(turn, "doubles" + (turn.moment().answer().equals(Optional.of(CubeAction.PASS)) ? ", passed" : ""));
            svg.append("<rect class=cube x=")
                    .append(number(x - 5))
                    .append(" y=")
                    .append(number(TOP));
            svg.append(" width=10 height=10 rx=2></rect></a>\n");
        }
        Decision worst = null;
        for (Decision decision : turn.decisions()) {
            worst = worst == null || decision.points() < worst.points() ? decision : worst;
        }
        if (worst != null && worst.grade() != Grade.FINE) {
            link(turn, ReviewWords.did(turn, worst) + " (" + worst.grade().word() + ")");
            mark(worst.grade(), x, y);
            svg.append("</a>\n");
        }
    }

    private void link(ReviewedTurn turn, String words) {
        svg.append("<a href='#").append(ReviewCard.id(turn)).append("'><title>");
        svg.append("turn ").append(turn.moment().turn() + 1).append(", ");
        svg.append(Html.escaped(report.heading().name(turn.moment().onRoll()) + ": " + words))
                .append("</title>");
    }

    private void mark(Grade grade, double x, double y) {
        if (grade == Grade.HEAVY) {
            svg.append("<path class=heavy d='M").append(number(x)).append(' ').append(number(y - 9));
            svg.append("l8 9l-8 9l-8 -9z'></path>");
        } else {
            svg.append("<circle class=")
                    .append(grade.word())
                    .append(" cx=")
                    .append(number(x))
                    .append(" cy=");
            svg.append(number(y))
                    .append(grade == Grade.COSTLY ? " r=6" : " r=4")
                    .append("></circle>");
        }
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
