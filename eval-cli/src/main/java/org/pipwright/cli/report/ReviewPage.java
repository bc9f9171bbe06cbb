package org.pipwright.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.pipwright.cli.page.Pages;
import org.pipwright.cli.picture.BoardPicture;
import org.pipwright.cli.picture.SvgText;
import org.pipwright.cli.picture.Theme;
import org.pipwright.engine.record.Heading;
import org.pipwright.engine.review.ReviewedTurn;
import org.pipwright.engine.review.SideAccount;
import org.pipwright.engine.review.TurningPoint;

/**
 * A review as a page shows it.
 *
 * @param title what was played, in a line
 * @param names the two sides
 * @param facts rules, points, and what the record says of itself
 * @param judge who judged, and how deeply
 * @param remarks remarks on the whole record
 * @param accounts how the sides did
 * @param turningPoints where it turned
 * @param games the games
 * @param notes how to read the figures
 */
public record ReviewPage(
        String title,
        List<String> names,
        List<String> facts,
        String judge,
        List<String> remarks,
        List<Account> accounts,
        List<PointList> turningPoints,
        List<Game> games,
        List<String> notes) {
    /**
     * A line about how the sides did.
     *
     * @param label what it is
     * @param part whether it is part of the line above
     * @param first figure of the first side
     * @param second figure of the second side
     */
    public record Account(String label, boolean part, String first, String second) {}

    /**
     * Decisions or rolls that changed most.
     *
     * @param heading which of them
     * @param points the decisions or rolls
     */
    public record PointList(String heading, List<Point> points) {}

    /**
     * A decision or a roll that changed much.
     *
     * @param side whose it was, 0 or 1
     * @param turn id of its turn on the page
     * @param event what happened
     * @param change what that changed
     * @param place where in the record
     */
    public record Point(int side, String turn, String event, String change, String place) {}

    /**
     * A game.
     *
     * @param number its number, from 1
     * @param about the score before it, and how it ended
     * @param curve the first side's chance to win it; none if it has no turns
     * @param turns its turns
     */
    public record Game(int number, String about, Optional<ReviewCurve> curve, List<ReviewCard> turns) {}

    /**
     * Makes the page: one file that needs nothing else, no network, no fonts, and no script but the one that opens a turn.
     *
     * @param report the review
     * @return HTML, to be written in UTF-8
     */
    public static String html(ReviewReport report) {
        return Pages.of("review.jte", of(report));
    }

    /**
     * What the page shows.
     *
     * @param report the review
     * @return its parts
     */
    public static ReviewPage of(ReviewReport report) {
        Heading heading = report.heading();
        List<String> facts = new ArrayList<>();
        facts.add(ReviewWords.rules(heading.rules()) + ", " + report.record().points(0) + " : "
                + report.record().points(1));
        Heading.DETAILS.stream()
                .filter(heading.details()::containsKey)
                .map(heading.details()::get)
                .forEach(facts::add);
        List<PointList> points = new ArrayList<>();
        report.turningPoints()
                .forEach((of, all) -> points.add(new PointList(
                        of.substring(0, 1).toUpperCase(Locale.ROOT) + of.substring(1),
                        all.stream().map(point -> point(report, point)).toList())));
        return new ReviewPage(
                report.title(),
                List.of(heading.name(0), heading.name(1)),
                facts,
                "Judged by the net " + report.net().name() + ", " + report.depth() + ".",
                heading.remarks().stream().filter(remark -> !remark.isEmpty()).toList(),
                accounts(report),
                points,
                IntStream.range(0, report.record().games().size())
                        .mapToObj(game -> game(report, game))
                        .toList(),
                notes(report));
    }

    /**
     * The empty board under all boards of the page.
     *
     * @return an SVG element that shows nothing by itself
     */
    public String emptyBoard() {
        return board();
    }

    /**
     * The empty board that the boards of {@link ReviewCard} lie over.
     *
     * @return an SVG element that shows nothing by itself
     */
    public static String board() {
        return SvgText.symbol(BoardPicture.empty(Theme.LIGHT), ReviewCard.BOARD);
    }

    /**
     * How the sides did.
     *
     * @param report the review
     * @return lines of a table
     */
    public static List<Account> accounts(ReviewReport report) {
        SideAccount first = report.review().account(0);
        SideAccount second = report.review().account(1);
        return ReviewNotes.accountLines(report).stream()
                .map(line -> new Account(
                        line.label(),
                        line.part(),
                        line.value().apply(first),
                        line.value().apply(second)))
                .toList();
    }

    private static Point point(ReviewReport report, TurningPoint point) {
        ReviewedTurn turn = point.turn();
        return new Point(
                point.side(),
                ReviewCard.id(turn),
                ReviewWords.event(report, point),
                report.total(point.change()),
                "game " + (turn.moment().game() + 1) + ", turn "
                        + (turn.moment().turn() + 1));
    }

    private static Game game(ReviewReport report, int game) {
        List<ReviewedTurn> turns = report.review().game(game);
        return new Game(
                game + 1,
                about(report, game),
                turns.isEmpty() ? Optional.empty() : Optional.of(ReviewCurve.of(report, game)),
                turns.stream().map(turn -> ReviewCard.of(report, turn)).toList());
    }

    /**
     * A game in a line.
     *
     * @param report the review
     * @param game number of the game, from 0
     * @return the score before it, and how it ended
     */
    public static String about(ReviewReport report, int game) {
        int[] score = report.scoreBefore(game);
        return "at " + score[0] + " : " + score[1] + " · " + report.ending(game);
    }

    private static List<String> notes(ReviewReport report) {
        List<String> notes = new ArrayList<>();
        notes.add("How to read this: " + ReviewNotes.UNITS);
        notes.add(report.match() ? ReviewNotes.MATCH : ReviewNotes.MONEY);
        notes.add(ReviewNotes.COUNTED);
        if (!report.match()) {
            notes.add(CubeWords.CAUTION);
        }
        return notes;
    }
}
