package org.pipwright.cli.report;

import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.record.Rules;
import org.pipwright.engine.review.Decision;
import org.pipwright.engine.review.Moment;
import org.pipwright.engine.review.ReviewedTurn;
import org.pipwright.engine.review.TurningPoint;

/** Decisions in words. */
final class ReviewWords {
    private ReviewWords() {}

    static String rules(Rules rules) {
        if (rules.match()) {
            return "match to " + Phrases.count(rules.length(), "point");
        }
        return "money play" + (rules.jacoby() ? ", Jacoby rule" : ", no Jacoby rule")
                + (rules.beavers() ? ", beavers" : "");
    }

    /** What was done, such as {@code 8/5 6/5} or {@code takes}. */
    static String did(ReviewedTurn turn, Decision decision) {
        switch (decision.kind()) {
            case PLAY:
                return made(turn).toString();
            case DOUBLE:
                return turn.moment().doubled() ? doubles(turn.moment()) : "rolls, no double";
            default:
                return answers(turn.moment().answer().orElseThrow());
        }
    }

    static String answers(CubeAction answer) {
        return answer == CubeAction.PASS ? "passes" : CubeWords.action(answer) + "s";
    }

    static String doubles(Moment moment) {
        return moment.cube().owner() == CubeOwner.CENTRE ? "doubles" : "redoubles";
    }

    static Play made(ReviewedTurn turn) {
        return turn.moment().played().orElseThrow().play();
    }

    /** What would have been best, such as {@code 8/5 6/5} or {@code pass}. */
    static String best(ReviewedTurn turn, Decision decision) {
        if (decision.kind() == Decision.Kind.PLAY) {
            return turn.finding().options().get(0).play().toString();
        }
        CubeValues values = turn.finding().cube().orElseThrow();
        if (decision.kind() == Decision.Kind.ANSWER) {
            return CubeWords.action(values.answer());
        }
        if (values.tooGood()) {
            return "play on, too good";
        }
        return values.shouldDouble() ? "double" : "roll";
    }

    /** What a turning point was, such as {@code Ben rolls 6-6}. */
    static String event(ReviewReport report, TurningPoint point) {
        String name = report.heading().name(point.side());
        ReviewedTurn turn = point.turn();
        if (point.decision().isEmpty()) {
            return name + " rolls " + turn.moment().played().orElseThrow().roll();
        }
        Decision decision = point.decision().get();
        String did = did(turn, decision);
        return name + " " + (decision.kind() == Decision.Kind.PLAY ? "plays " : "") + did + " instead of "
                + best(turn, decision);
    }
}
