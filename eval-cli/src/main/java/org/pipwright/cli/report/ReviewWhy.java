package org.pipwright.cli.report;

import java.util.List;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.explain.ExplainedPlay;
import org.pipwright.engine.explain.PlayFacts;
import org.pipwright.engine.explain.Swings;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.review.Decision;
import org.pipwright.engine.review.PlayOption;
import org.pipwright.engine.review.ReviewedTurn;

/** How a play that was made differs from the best one, for those that cost something. */
final class ReviewWhy {
    private ReviewWhy() {}

    /** Sentences about the play that was made; none for other decisions and for fine plays. */
    static List<String> sentences(ReviewedTurn turn, Decision decision) {
        if (decision.kind() != Decision.Kind.PLAY || decision.grade() == Grade.FINE) {
            return List.of();
        }
        List<PlayOption> options = turn.finding().options();
        PlayOption made = options.stream()
                .filter(option -> made(turn, option))
                .findFirst()
                .orElseThrow();
        Position from = turn.moment().position();
        return RivalWords.sentences(explained(from, options.get(0)), explained(from, made));
    }

    static boolean made(ReviewedTurn turn, PlayOption option) {
        return option.play().result().equals(ReviewWords.made(turn).result());
    }

    private static ExplainedPlay explained(Position from, PlayOption option) {
        PlayVerdict ranked = new PlayVerdict(
                option.play(),
                option.value(),
                option.outcomes(),
                option.depth(),
                option.depth().lookahead(),
                Basis.ESTIMATED,
                0,
                0);
        return new ExplainedPlay(ranked, PlayFacts.of(from, option.play()), Swings.of(List.of()));
    }
}
