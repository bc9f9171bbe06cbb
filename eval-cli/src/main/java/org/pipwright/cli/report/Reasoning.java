package org.pipwright.cli.report;

import java.util.List;
import java.util.function.Function;
import java.util.function.Predicate;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.drill.CubeExercise;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.drill.PlayExercise;
import org.pipwright.engine.explain.ExplainedPlay;
import org.pipwright.engine.explain.Explanation;
import org.pipwright.engine.explain.Motive;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;

/**
 * Finds why the answers of exercises are right: facts as {@code rank --explain} tells them, and what decides about the
 * cube.
 *
 * @param judge the judge of the exercises
 * @param lookahead future rolls that it averages over
 * @param simulateRaces whether it simulates races
 * @param terms how the cube is judged under given stakes, seen from the side on roll
 */
public record Reasoning(Judge judge, int lookahead, boolean simulateRaces, Function<Stakes, CubeTerms> terms) {
    /**
     * The reasons of an exercise's answer.
     *
     * @param question the exercise
     * @return sentences
     */
    public Reasons of(Exercise question) {
        return of(question, motive -> true);
    }

    /**
     * The same, with a lesson about what a sheet is about, if the answer has such a reason.
     *
     * @param question the exercise
     * @param about the kinds of fact
     * @return sentences
     */
    public Reasons of(Exercise question, Predicate<Motive> about) {
        return question instanceof PlayExercise ? plays((PlayExercise) question, about) : cube((CubeExercise) question);
    }

    private Reasons plays(PlayExercise question, Predicate<Motive> about) {
        Explanation explanation = Explanation.of(
                        question.position(),
                        List.of(question.best(), question.weak()),
                        judge,
                        // What the ranking looks ahead for is its order: the facts that differ show without it, at
                        // once.
                        0)
                .under(question.asked(), terms);
        ExplainedPlay weak = explanation.rivals().get(0);
        return new Reasons(
                PlayWords.facts(explanation.best()),
                RivalWords.sentences(explanation.best(), weak, explanation.gammons()),
                LessonWords.ofPlay(RivalWords.leads(explanation.best(), weak, explanation.gammons()), about));
    }

    private Reasons cube(CubeExercise question) {
        Effort effort = Effort.lookahead(lookahead).withRaces(simulateRaces);
        Question before = Question.before(question.position());
        Verdict verdict = judge.ask(before, effort);
        CubeCase found = new CubeCase(
                question.position(),
                question.cube(),
                question.stakes(),
                question.values(),
                verdict.outcomes(),
                verdict.basis(),
                terms.apply(question.stakes()),
                judge.quickMarket(before.with(question.stakes(), question.cube()), effort));
        return new Reasons(
                CubeReasons.sentences(found, question.answering() ? Voice.ANSWERER : Voice.DOUBLER),
                List.of(),
                LessonWords.ofCube(question));
    }
}
