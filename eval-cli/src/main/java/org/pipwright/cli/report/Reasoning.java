package org.pipwright.cli.report;

import java.util.List;
import java.util.function.Function;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.drill.CubeQuestion;
import org.pipwright.engine.drill.PlayQuestion;
import org.pipwright.engine.drill.Question;
import org.pipwright.engine.explain.Explanation;
import org.pipwright.engine.search.PlaySearch;

/**
 * Finds why the answers of exercises are right: facts as {@code rank --explain} tells them, and what decides about the
 * cube.
 *
 * @param search values plays and chances as the judge of the exercises does
 * @param lookahead future rolls that the judge averages over
 * @param terms how the cube is judged under given stakes, seen from the side on roll
 */
public record Reasoning(PlaySearch search, int lookahead, Function<Stakes, CubeTerms> terms) {
    /**
     * The reasons of an exercise's answer.
     *
     * @param question the exercise
     * @return sentences
     */
    public Reasons of(Question question) {
        return question instanceof PlayQuestion ? plays((PlayQuestion) question) : cube((CubeQuestion) question);
    }

    private Reasons plays(PlayQuestion question) {
        Explanation explanation = Explanation.of(
                question.position(),
                List.of(question.best(), question.weak()),
                search,
                // With the reply itself as deep as the ranking was.
                Math.max(0, lookahead - 1));
        return new Reasons(
                PlayWords.facts(explanation.best()),
                RivalWords.sentences(explanation.best(), explanation.rivals().get(0)));
    }

    private Reasons cube(CubeQuestion question) {
        return new Reasons(
                CubeFacts.sentences(
                        question, search.odds(question.position(), lookahead), terms.apply(question.stakes())),
                List.of());
    }
}
