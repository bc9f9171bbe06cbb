package org.pipwright.cli.report;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.review.SideAccount;

/** What a review's numbers mean, and the lines of the two sides' accounts. */
final class ReviewNotes {
    static final String UNITS =
            "cost: points per unit of the cube, against the best choice with the cube where it stands;"
                    + " fine: less than 0.010, thin: less than 0.040, costly: less than 0.100, heavy: more.";

    static final String MATCH =
            "In a match a point is half of what lies between winning and losing a single game with the"
                    + " cube as it is; luck and turning points are chances to win the match. Chances to win a game are those of"
                    + " the game at hand.";

    static final String MONEY = "Luck and turning points are points of the game, the cube counted.";

    static final String COUNTED =
            "Decisions: plays where there was more than one; every double and answer; rolling without"
                    + " a double where that was wrong or a double would have cost less than 0.100.";

    private ReviewNotes() {}

    /** The lines by their labels. */
    static Map<String, Function<SideAccount, String>> accountRows(ReviewReport report) {
        Map<String, Function<SideAccount, String>> rows = new LinkedHashMap<>();
        rows.put("cost a decision", account -> Numbers.cost(account.mean()));
        rows.put("  a play", account -> Numbers.cost(account.playMean()));
        rows.put("  a cube decision", account -> Numbers.cost(account.cubeMean()));
        rows.put("plays that count", account -> String.valueOf(account.plays()));
        rows.put("cube decisions that count", account -> String.valueOf(account.cubes()));
        for (Grade grade : Grade.values()) {
            rows.put(
                    "  " + grade.word().toLowerCase(Locale.ROOT),
                    account -> String.valueOf(account.grades().get(grade.ordinal())));
        }
        rows.put(
                report.match() ? "match chance by mistakes" : "points by mistakes",
                account -> report.total(account.lost()));
        rows.put(report.match() ? "match chance by luck" : "points by luck", account -> report.total(account.luck()));
        return rows;
    }
}
