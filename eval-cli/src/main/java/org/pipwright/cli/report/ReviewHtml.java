package org.pipwright.cli.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import org.pipwright.cli.picture.BoardPicture;
import org.pipwright.cli.picture.SvgText;
import org.pipwright.cli.picture.Theme;
import org.pipwright.engine.record.Heading;
import org.pipwright.engine.review.ReviewedTurn;
import org.pipwright.engine.review.SideAccount;
import org.pipwright.engine.review.TurningPoint;

/** A review as one page that needs nothing else: no network, no fonts, and no script but the one that opens a turn. */
public final class ReviewHtml {
    private final ReviewReport report;
    private final StringBuilder html = new StringBuilder();

    private ReviewHtml(ReviewReport report) {
        this.report = report;
    }

    /**
     * Makes the page.
     *
     * @param report the review
     * @return HTML, to be written in UTF-8
     */
    public static String page(ReviewReport report) {
        return new ReviewHtml(report).write();
    }

    private String write() {
        html.append("<!doctype html>\n<html lang=en><head><meta charset=utf-8>\n")
                .append("<meta name=viewport content='width=device-width,initial-scale=1'>\n")
                .append(Html.element("title", report.title()))
                .append("\n<style>\n")
                .append(resource("review.css"))
                .append("</style></head><body>\n")
                .append(SvgText.symbol(BoardPicture.empty(Theme.LIGHT), ReviewCard.BOARD));
        head();
        html.append("<main>\n<div class=overview>\n");
        accounts();
        turningPoints();
        html.append("</div>\n");
        for (int game = 0; game < report.record().games().size(); game++) {
            game(game);
        }
        html.append("</main>\n");
        foot();
        return html.append("<script>\n")
                .append(resource("review.js"))
                .append("</script></body></html>\n")
                .toString();
    }

    private static String resource(String name) {
        try (InputStream in = ReviewHtml.class.getResourceAsStream("/org/pipwright/cli/" + name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read the resource " + name, e);
        }
    }

    private void head() {
        Heading heading = report.heading();
        html.append("<header>\n<h1>");
        for (int side = 0; side < 2; side++) {
            html.append(side == 0 ? "" : " <small>against</small> ");
            html.append("<span class=side").append(side).append("><i class=disc></i>");
            html.append(Html.escaped(heading.name(side))).append("</span>");
        }
        html.append("</h1>\n<p>").append(Html.escaped(ReviewWords.rules(heading.rules())));
        html.append(", ")
                .append(report.record().points(0))
                .append(" : ")
                .append(report.record().points(1));
        for (String detail : Heading.DETAILS) {
            if (heading.details().containsKey(detail)) {
                html.append(" · ").append(Html.escaped(heading.details().get(detail)));
            }
        }
        html.append("</p>\n<p class=hint>Judged by the net ")
                .append(Html.escaped(report.net().name()));
        html.append(", ").append(Html.escaped(report.depth())).append(".</p>\n");
        heading.remarks().stream().filter(remark -> !remark.isEmpty()).forEach(remark -> html.append(
                        Html.element("p class=note", remark))
                .append('\n'));
        html.append("</header>\n");
    }

    private void accounts() {
        SideAccount first = report.review().account(0);
        SideAccount second = report.review().account(1);
        html.append("<table class=accounts><thead><tr><td></td>");
        html.append(Html.element("th", report.heading().name(0)))
                .append(Html.element("th", report.heading().name(1)));
        html.append("</tr></thead><tbody>\n");
        ReviewNotes.accountRows(report).forEach((label, value) -> {
            html.append(label.startsWith(" ") ? "<tr class=part>" : "<tr>").append(Html.element("th", label.strip()));
            html.append(Html.element("td", value.apply(first))).append(Html.element("td", value.apply(second)));
            html.append("</tr>\n");
        });
        html.append("</tbody></table>\n");
    }

    private void turningPoints() {
        if (report.turningPoints().isEmpty()) {
            return;
        }
        html.append("<section><h2>Turning points</h2>\n");
        report.turningPoints().forEach((heading, points) -> {
            html.append(Html.element("h3", heading.substring(0, 1).toUpperCase(Locale.ROOT) + heading.substring(1)));
            html.append("\n<ol class=points>\n");
            points.forEach(this::turningPoint);
            html.append("</ol>\n");
        });
        html.append("</section>\n");
    }

    private void turningPoint(TurningPoint point) {
        ReviewedTurn turn = point.turn();
        html.append("<li class=side").append(point.side()).append("><a href='#").append(ReviewCard.id(turn));
        html.append("'><i class=disc></i>").append(Html.escaped(ReviewWords.event(report, point)));
        html.append("</a> <b>").append(report.total(point.change())).append("</b> <small>game ");
        html.append(turn.moment().game() + 1)
                .append(", turn ")
                .append(turn.moment().turn() + 1);
        html.append("</small></li>\n");
    }

    private void game(int game) {
        int[] score = report.scoreBefore(game);
        html.append("<section><h2>Game ")
                .append(game + 1)
                .append(" <small>at ")
                .append(score[0])
                .append(" : ");
        html.append(score[1])
                .append(" · ")
                .append(Html.escaped(report.ending(game)))
                .append("</small></h2>\n");
        List<ReviewedTurn> turns = report.review().game(game);
        if (!turns.isEmpty()) {
            html.append("<p class=hint>Chance of ")
                    .append(Html.escaped(report.heading().name(0)));
            html.append(" to win this game; the marks lead to doubles and to decisions that cost something.</p>\n");
            html.append(ReviewCurve.of(report, game));
        }
        turns.forEach(turn -> new ReviewCard(report, turn, html).write());
        html.append("</section>\n");
    }

    private void foot() {
        html.append("<footer>\n");
        html.append(Html.element("p", "How to read this: " + ReviewNotes.UNITS)).append('\n');
        html.append(Html.element("p", report.match() ? ReviewNotes.MATCH : ReviewNotes.MONEY))
                .append('\n');
        html.append(Html.element("p", ReviewNotes.COUNTED)).append('\n');
        if (!report.match()) {
            html.append(Html.element("p", CubeWords.CAUTION)).append('\n');
        }
        html.append("</footer>\n");
    }
}
