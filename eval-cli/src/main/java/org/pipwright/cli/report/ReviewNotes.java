package org.pipwright.cli.report;

import java.util.ArrayList;
import java.util.List;
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

    /**
     * A line of the accounts.
     *
     * @param label what it is
     * @param part whether it is part of the line above
     * @param value what it says of a side
     */
    record Line(String label, boolean part, Function<SideAccount, String> value) {
        /** The label as text shows it, parts indented. */
        String indented() {
            return (part ? "  " : "") + label;
        }
    }

    /** The lines of the accounts, in their order. */
    static List<Line> accountLines(ReviewReport report) {
        List<Line> lines = new ArrayList<>();
        lines.add(new Line("cost a decision", false, account -> Numbers.cost(account.mean())));
        lines.add(new Line("a play", true, account -> Numbers.cost(account.playMean())));
        lines.add(new Line("a cube decision", true, account -> Numbers.cost(account.cubeMean())));
        lines.add(new Line("plays that count", false, account -> String.valueOf(account.plays())));
        grades(lines, SideAccount::playGrades);
        lines.add(new Line("cube decisions that count", false, account -> String.valueOf(account.cubes())));
        grades(lines, SideAccount::cubeGrades);
        String unit = report.match() ? "match chance" : "points";
        lines.add(new Line(unit + " by mistakes", false, account -> report.total(account.lost())));
        lines.add(new Line(unit + " by luck", false, account -> report.total(account.luck())));
        return lines;
    }

    private static void grades(List<Line> lines, Function<SideAccount, List<Integer>> counts) {
        for (Grade grade : Grade.values()) {
            lines.add(new Line(
                    grade.word(),
                    true,
                    account -> String.valueOf(counts.apply(account).get(grade.ordinal()))));
        }
    }
}
