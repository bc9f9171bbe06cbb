package org.pipwright.engine.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.Function;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.GammonValues;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.search.RollReply;

/**
 * The facts about the best play of a roll and its rivals.
 *
 * @param lookahead rolls averaged over after each reply of the opponent
 * @param best the best play
 * @param rivals the others, best first
 * @param gammons what gammons are worth under the stakes
 */
public record Explanation(int lookahead, ExplainedPlay best, List<ExplainedPlay> rivals, GammonValues gammons) {
    /** What gammons are worth without a cube and in money play. */
    public static final GammonValues USUAL = new GammonValues(0.5, 0.5);

    /**
     * Keeps the rivals.
     *
     * @param lookahead after each reply
     * @param best the best play
     * @param rivals the others
     * @param gammons what gammons are worth
     */
    public Explanation {
        rivals = List.copyOf(rivals);
    }

    /**
     * Gathers the facts.
     *
     * @param position the position before the play
     * @param ranking plays of a roll there, best first, at least one
     * @param judge values the opponent's replies
     * @param lookahead rolls to average over after each reply, 0 to 5
     * @return the explanation
     */
    public static Explanation of(Position position, List<PlayVerdict> ranking, Judge judge, int lookahead) {
        return of(position, ranking, judge, lookahead, Progress.NONE);
    }

    /**
     * Gathers the facts unless it is told to stop.
     *
     * @param position the position before the play
     * @param ranking plays of a roll there, best first, at least one
     * @param judge values the opponent's replies
     * @param lookahead rolls to average over after each reply, 0 to 5
     * @param progress asked whether to stop
     * @return the explanation
     * @throws CancellationException if it was stopped
     */
    public static Explanation of(
            Position position, List<PlayVerdict> ranking, Judge judge, int lookahead, Progress progress) {
        List<ExplainedPlay> explained = new ArrayList<>();
        for (PlayVerdict ranked : ranking) {
            Position next = ranked.play().next();
            explained.add(new ExplainedPlay(
                    ranked, PlayFacts.of(position, ranked.play()), swings(next, judge, lookahead, progress)));
        }
        return new Explanation(lookahead, explained.get(0), explained.subList(1, explained.size()), USUAL);
    }

    private static Swings swings(Position next, Judge judge, int lookahead, Progress progress) {
        if (next.finished()) {
            return Swings.of(List.of(), 0);
        }
        List<RollReply> still = judge.replies(next, 0, progress);
        double costOfHits = CostOfHits.of(next, still, judge, progress);
        return Swings.of(lookahead == 0 ? still : judge.replies(next, lookahead, progress), costOfHits);
    }

    /**
     * What gammons are worth when plays are compared. In money play the usual, also by the Jacoby rule while the cube is in the
     * centre: a side that is about to win gammons turns it first.
     *
     * @param stakes what is played for
     * @param terms the same as terms of the cube, both seen from the side on roll
     * @param cube the cube, seen from the side on roll
     * @return both sides' values
     */
    public static GammonValues gammons(Stakes stakes, CubeTerms terms, CubeState cube) {
        return stakes instanceof MoneyStakes
                ? USUAL
                : GammonValues.of(terms, cube).orElse(USUAL);
    }

    /**
     * The same under the stakes of a question.
     *
     * @param question what was asked
     * @param terms how the cube is judged under given stakes, seen from the side on roll
     * @return the explanation
     */
    public Explanation under(Question question, Function<Stakes, CubeTerms> terms) {
        return question.cubeful()
                ? with(gammons(question.stakes(), terms.apply(question.stakes()), question.cube()))
                : this;
    }

    /**
     * The same under other stakes.
     *
     * @param worth what gammons are worth under them
     * @return the explanation
     */
    public Explanation with(GammonValues worth) {
        return new Explanation(lookahead, best, rivals, worth);
    }
}
