package org.pipwright.engine.cubeplay;

import java.util.function.Function;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.search.CubeSearch;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.LookaheadSettings;

/** Does with the cube what its terms find right, and leaves it alone where all is the same. Serves one thread. */
public final class JudgingCubePlayer implements CubePlayer {
    private final PositionEvaluator evaluator;
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
    public JudgingCubePlayer(PositionEvaluator evaluator, Function<Stakes, CubeTerms> terms, int lookahead) {
        this.evaluator = evaluator;
        this.search = new CubeSearch(Judgement.by(evaluator));
        this.terms = terms;
        this.lookahead = lookahead;
    }

    @Override
    public CubeAction act(Position position, CubeGame game) {
        CubeTerms mine = terms.apply(game.stakes());
        CubeValues values = lookahead == 0
                ? mine.values(position, evaluator.evaluate(position), game.cube())
                : search.values(position, game.cube(), mine, lookahead);
        if (game.actions().contains(CubeAction.ROLL)) {
            // Where it makes no difference, as with a dead cube, doubling again and again would only be a nuisance.
            return values.shouldDouble() && !values.optional() ? CubeAction.DOUBLE : CubeAction.ROLL;
        }
        return values.answer();
    }
}
