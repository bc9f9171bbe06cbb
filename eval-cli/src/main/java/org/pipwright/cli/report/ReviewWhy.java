package org.pipwright.cli.report;

import java.util.List;
import org.pipwright.engine.cube.GammonValues;
import org.pipwright.engine.explain.ExplainedPlay;
import org.pipwright.engine.explain.Explanation;
import org.pipwright.engine.explain.PlayFacts;
import org.pipwright.engine.explain.Swings;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.review.Decision;
import org.pipwright.engine.review.ReviewedTurn;

/** How a play that was made differs from the best one, for those that cost something. */
final class ReviewWhy {
    private ReviewWhy() {}

    /** Sentences about the play that was made; none for other decisions and for fine plays. */
    static List<String> sentences(ReviewReport report, ReviewedTurn turn, Decision decision) {
        if (decision.kind() != Decision.Kind.PLAY || decision.grade() == Grade.FINE) {
            return List.of();
        }
        List<PlayVerdict> options = turn.finding().options();
        PlayVerdict made = options.stream()
                .filter(option -> made(turn, option))
                .findFirst()
                .orElseThrow();
        Position from = turn.moment().position();
        GammonValues gammons = GammonValues.of(
                        report.terms().apply(turn.moment().stakes()),
                        turn.moment().rolling())
                .orElse(Explanation.USUAL);
        return RivalWords.sentences(explained(from, options.get(0)), explained(from, made), gammons);
    }

    static boolean made(ReviewedTurn turn, PlayVerdict option) {
        return option.play().result().equals(ReviewWords.made(turn).result());
    }

    private static ExplainedPlay explained(Position from, PlayVerdict option) {
        return new ExplainedPlay(option, PlayFacts.of(from, option.play()), Swings.of(List.of(), 0));
    }
}
