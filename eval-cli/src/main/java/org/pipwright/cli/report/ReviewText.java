package org.pipwright.cli.report;

import java.io.PrintWriter;
import java.util.Locale;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.record.Entry;
import org.pipwright.engine.review.Decision;
import org.pipwright.engine.review.ReviewedTurn;
import org.pipwright.engine.review.SideAccount;
import org.pipwright.engine.review.TurningPoint;
import org.pipwright.engine.rules.GameResult;

/** A review as text. */
public final class ReviewText {
    private final ReviewReport report;
    private final PrintWriter out;

    private ReviewText(ReviewReport report, PrintWriter out) {
        this.report = report;
        this.out = out;
    }

    /**
     * Prints a review.
     *
     * @param report the review
     * @param out where to
     */
    public static void write(ReviewReport report, PrintWriter out) {
        new ReviewText(report, out).write();
    }

    private void write() {
        out.println(report.title());
        out.println("net " + report.net().name() + ", " + report.depth());
        out.println();
        accounts().print(out);
        turningPoints();
        for (int game = 0; game < report.record().games().size(); game++) {
            game(game);
        }
        out.println();
        out.println(ReviewNotes.UNITS);
        out.println(report.match() ? ReviewNotes.MATCH : ReviewNotes.MONEY);
        out.println(ReviewNotes.COUNTED);
        if (!report.match()) {
            out.println(CubeWords.CAUTION);
        }
    }

    private Table accounts() {
        SideAccount first = report.review().account(0);
        SideAccount second = report.review().account(1);
        Table table = new Table("lrr");
        table.row("", report.heading().name(0), report.heading().name(1));
        ReviewNotes.accountLines(report)
                .forEach(line -> table.row(
                        line.indented(), line.value().apply(first), line.value().apply(second)));
        return table;
    }

    private void turningPoints() {
        report.turningPoints().forEach((heading, points) -> {
            out.println();
            out.println("turning points: " + heading);
            Table table = new Table("llr");
            for (TurningPoint point : points) {
                table.row("  " + place(point.turn()), ReviewWords.event(report, point), report.total(point.change()));
            }
            table.print(out);
        });
    }

    private static String place(ReviewedTurn turn) {
        return "game " + (turn.moment().game() + 1) + ", turn " + (turn.moment().turn() + 1);
    }

    private void game(int game) {
        int[] score = report.scoreBefore(game);
        out.println();
        out.println("game " + (game + 1) + " at " + score[0] + "-" + score[1] + ": " + report.ending(game));
        Table table = new Table("rrllrllr");
        table.row(
                report.heading().name(0) + " wins game, %",
                "turn",
                "who",
                "what",
                "cost",
                "grade",
                "better",
                report.luckHeading());
        for (ReviewedTurn turn : report.review().game(game)) {
            turn(table, turn);
        }
        table.print(out);
    }

    private void turn(Table table, ReviewedTurn turn) {
        String win = Numbers.percent(ReviewReport.winChance(turn));
        String number = String.valueOf(turn.moment().turn() + 1);
        for (Decision decision : turn.decisions()) {
            if (decision.kind() == Decision.Kind.PLAY || turn.moment().doubled() || decision.grade() != Grade.FINE) {
                boolean play = decision.kind() == Decision.Kind.PLAY;
                String did = (play ? turn.moment().played().orElseThrow().roll() + ": " : "")
                        + ReviewWords.did(turn, decision);
                boolean fine = decision.points() == 0;
                table.row(
                        win,
                        number,
                        report.heading().name(decision.side()),
                        did,
                        decision.counted() ? Numbers.cost(decision.points()) : "",
                        decision.counted() ? decision.grade().word() : "forced",
                        fine ? "" : ReviewWords.best(turn, decision),
                        play ? report.total(turn.luckTotal()) : "");
            }
        }
        turn.moment()
                .resigned()
                .ifPresent(given ->
                        table.row(win, number, report.heading().name(given.side()), resigns(given), "", "", "", ""));
    }

    static String resigns(Entry.Resignation given) {
        return "resigns a " + given.result().name().toLowerCase(Locale.ROOT)
                + (given.result() == GameResult.SINGLE ? " game" : "");
    }
}
