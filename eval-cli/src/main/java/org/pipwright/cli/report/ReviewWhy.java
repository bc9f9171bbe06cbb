package org.pipwright.cli.report;

import java.util.List;
import org.pipwright.engine.cube.GammonValues;
import org.pipwright.engine.explain.ExplainedPlay;
import org.pipwright.engine.explain.Explanation;
import org.pipwright.engine.explain.PlayFacts;
import org.pipwright.engine.explain.Swings;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.record.Heading;
import org.pipwright.engine.review.Decision;
import org.pipwright.engine.review.Moment;
import org.pipwright.engine.review.ReviewedTurn;

/** Why what was done is worse than the best, for decisions that cost something. */
final class ReviewWhy {
    private ReviewWhy() {}

    /** Sentences about the play that was made, or about the cube; none for fine decisions. */
    static List<String> sentences(ReviewReport report, ReviewedTurn turn, Decision decision) {
        if (decision.grade() == Grade.FINE) {
            return List.of();
        }
        return decision.kind() == Decision.Kind.PLAY ? play(report, turn) : cube(report, turn);
    }

    private static List<String> cube(ReviewReport report, ReviewedTurn turn) {
        Moment moment = turn.moment();
        Question before = Question.before(moment.position()).with(moment.stakes(), moment.cube());
        CubeCase asked = new CubeCase(
                moment.position(),
                moment.cube(),
                moment.stakes(),
                turn.finding().cube().orElseThrow(),
                turn.finding().chances(),
                turn.finding().basis(),
                report.terms().apply(moment.stakes()),
                report.market().apply(before));
        Heading names = report.heading();
        return CubeReasons.sentences(asked, new Voice(names.name(moment.onRoll()), names.name(moment.opponent())));
    }

    private static List<String> play(ReviewReport report, ReviewedTurn turn) {
        List<PlayVerdict> options = turn.finding().options();
        PlayVerdict made = options.stream()
                .filter(option -> made(turn, option))
                .findFirst()
                .orElseThrow();
        Position from = turn.moment().position();
        GammonValues gammons = Explanation.gammons(
                turn.moment().stakes(),
                report.terms().apply(turn.moment().stakes()),
                turn.moment().rolling());
        return RivalWords.sentences(explained(from, options.get(0)), explained(from, made), gammons);
    }

    static boolean made(ReviewedTurn turn, PlayVerdict option) {
        return option.play().result().equals(ReviewWords.made(turn).result());
    }

    private static ExplainedPlay explained(Position from, PlayVerdict option) {
        return new ExplainedPlay(option, PlayFacts.of(from, option.play()), Swings.of(List.of(), 0));
    }
}
