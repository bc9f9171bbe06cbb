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
 * The first player's chance to win a game, turn by turn, laid out on a drawing of {@value #WIDTH} by {@value #HEIGHT}. Marks
 * on it lead to the decisions that cost something: a ring for thin, a disc for costly, a diamond for heavy ones; squares are
 * doubles.
 *
 * @param label what it shows, in a line
 * @param game number of the game, from 1
 * @param line spots of the curve
 * @param area the same, closed along an even game
 * @param even height of an even game
 * @param lines horizontal lines
 * @param numbers turns below the curve
 * @param marks what leads to turns
 */
public record ReviewCurve(
        String label,
        int game,
        String line,
        String area,
        String even,
        List<Label> lines,
        List<Label> numbers,
        List<Mark> marks) {
    /** Width of the drawing. */
    public static final int WIDTH = 720;

    /** Height of the drawing. */
    public static final int HEIGHT = 260;

    private static final double LEFT = 66;
    private static final double RIGHT = 14;
    private static final double TOP = 12;
    private static final double BOTTOM = 30;

    /**
     * Words at a place; for a horizontal line its height.
     *
     * @param at how far right, or how far down
     * @param words the words
     */
    public record Label(String at, String words) {}

    /**
     * What leads to a turn.
     *
     * @param kind {@code cube} for a double, else the word of a grade
     * @param x how far right its middle is
     * @param y how far down
     * @param turn id of the turn on the page
     * @param words what was done
     */
    public record Mark(String kind, String x, String y, String turn, String words) {}

    /**
     * The curve of a game.
     *
     * @param report the review
     * @param game number of the game, from 0; it has a turn, and all its turns are judged
     * @return the curve
     */
    public static ReviewCurve of(ReviewReport report, int game) {
        List<ReviewedTurn> turns = report.review().game(game);
        List<String> spots = spots(report, game, turns);
        String even = number(y(0.5));
        String line = String.join(" ", spots);
        List<Label> lines = new ArrayList<>();
        for (int percent = 0; percent <= 100; percent += 25) {
            lines.add(new Label(number(y(percent / 100.0)), percent + " %"));
        }
        int step = turns.size() > 60 ? 20 : turns.size() > 20 ? 10 : 5;
        List<Label> numbers = new ArrayList<>();
        for (int turn = step; turn <= turns.size(); turn += step) {
            numbers.add(new Label(number(x(turn - 1, turns)), String.valueOf(turn)));
        }
        List<Mark> marks = new ArrayList<>();
        turns.forEach(turn -> marks(report, turn, turns, marks));
        return new ReviewCurve(
                "Chance of " + report.heading().name(0) + " to win game " + (game + 1) + ", turn by turn",
                game + 1,
                line,
                line + " " + abscissa(spots.get(spots.size() - 1)) + "," + even + " " + abscissa(spots.get(0)) + ","
                        + even,
                even,
                lines,
                numbers,
                marks);
    }

    private static String abscissa(String spot) {
        return spot.substring(0, spot.indexOf(','));
    }

    /** Before each turn, and after the game if it has ended. */
    private static List<String> spots(ReviewReport report, int game, List<ReviewedTurn> turns) {
        List<String> spots = turns.stream()
                .map(turn -> number(x(turn.moment().turn(), turns)) + "," + number(y(ReviewReport.winChance(turn))))
                .collect(Collectors.toList());
        int points = report.record().games().get(game).points();
        if (points != 0) {
            spots.add(number(x(turns.size(), turns)) + "," + number(y(points > 0 ? 1 : 0)));
        }
        return spots;
    }

    private static double x(int turn, List<ReviewedTurn> turns) {
        return LEFT + (WIDTH - LEFT - RIGHT) * turn / Math.max(1, turns.size());
    }

    private static double y(double chance) {
        return TOP + (HEIGHT - TOP - BOTTOM) * (1 - chance);
    }

    private static void marks(ReviewReport report, ReviewedTurn turn, List<ReviewedTurn> turns, List<Mark> marks) {
        String x = number(x(turn.moment().turn(), turns));
        if (turn.moment().doubled()) {
            String passed = turn.moment().answer().equals(Optional.of(CubeAction.PASS)) ? ", passed" : "";
            marks.add(
                    new Mark("cube", x, number(TOP + 5), ReviewCard.id(turn), words(report, turn, "doubles" + passed)));
        }
        Decision worst = null;
        for (Decision decision : turn.decisions()) {
            worst = worst == null || decision.points() < worst.points() ? decision : worst;
        }
        if (worst != null && worst.grade() != Grade.FINE) {
            String grade = worst.grade().word();
            marks.add(new Mark(
                    grade,
                    x,
                    number(y(ReviewReport.winChance(turn))),
                    ReviewCard.id(turn),
                    words(report, turn, ReviewWords.did(turn, worst) + " (" + grade + ")")));
        }
    }

    private static String words(ReviewReport report, ReviewedTurn turn, String did) {
        return "turn " + (turn.moment().turn() + 1) + ", "
                + report.heading().name(turn.moment().onRoll()) + ": " + did;
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
