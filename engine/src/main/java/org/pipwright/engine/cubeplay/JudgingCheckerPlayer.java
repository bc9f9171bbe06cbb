package org.pipwright.engine.cubeplay;

import java.util.function.Function;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.search.CubeSearch;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.LookaheadSettings;

/**
 * Makes the play that leaves the most with the cube where it stands and at the score: points, or the chance to win the
 * match. With lookahead, plays that fall behind are left out. Serves one thread.
 */
public final class JudgingCheckerPlayer implements CheckerPlayer {
    private final CubeSearch search;
    private final Function<Stakes, CubeTerms> terms;
    private final int lookahead;

    /**
     * A player.
     *
     * @param evaluator gives chances
     * @param terms how to judge under given stakes, seen from the side on roll
     * @param lookahead future rolls to average over, 0 to {@value LookaheadSettings#MAX}
     */
    public JudgingCheckerPlayer(PositionEvaluator evaluator, Function<Stakes, CubeTerms> terms, int lookahead) {
        this.search = new CubeSearch(Judgement.by(evaluator));
        this.terms = terms;
        this.lookahead = lookahead;
    }

    @Override
    public int choose(int[] planes, PlayGenerator legal, Dice ties, CubeGame game) {
        return legal.size() == 1
                ? 0
                : search.choose(
                        planes, legal.results(), legal.size(), game.cube(), terms.apply(game.stakes()), lookahead);
    }
}
