package org.pipwright.engine.cubeplay;

import java.util.function.Function;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.search.CubeSearch;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.Lookahead;
import org.pipwright.engine.search.LookaheadSettings;

/**
 * Makes the play that leaves the most with the cube where it stands and at the score: points, or the chance to win the
 * match. Does with the cube what its terms find right, and leaves it alone where all is the same. Serves one thread.
 */
public final class JudgingPlayer implements Player, CubePlayer {
    private final PositionEvaluator evaluator;
    private final Lookahead search;
    private final CubeSearch cubes;
    private final Function<Stakes, CubeTerms> terms;
    private final int lookahead;

    /**
     * A player.
     *
     * @param evaluator gives chances
     * @param terms how to judge under given stakes, seen from the side on roll
     * @param lookahead future rolls to average over, 0 to {@value LookaheadSettings#MAX}
     */
    public JudgingPlayer(PositionEvaluator evaluator, Function<Stakes, CubeTerms> terms, int lookahead) {
        this.evaluator = evaluator;
        this.search = new Lookahead(Judgement.by(evaluator), LookaheadSettings.DEFAULT);
        this.cubes = new CubeSearch(search);
        this.terms = terms;
        this.lookahead = lookahead;
    }

    @Override
    public int choose(int[] planes, int at, PlayGenerator legal, Dice ties) {
        return legal.size() == 1
                ? 0
                : search.choose(planes, at, legal.results(), legal.size(), lookahead, new float[Outcomes.COUNT]);
    }

    @Override
    public int choose(int[] planes, PlayGenerator legal, Dice ties, CubeGame game) {
        CubeTerms mine = terms.apply(game.stakes());
        return legal.size() == 1
                ? 0
                : search.choose(planes, 0, legal.results(), legal.size(), lookahead, mine, game.cube());
    }

    @Override
    public CubeAction act(Position position, CubeGame game) {
        CubeTerms mine = terms.apply(game.stakes());
        CubeValues values = lookahead == 0
                ? mine.values(position, evaluator.evaluate(position), game.cube())
                : cubes.values(position, game.cube(), mine, lookahead);
        if (game.actions().contains(CubeAction.ROLL)) {
            // Where it makes no difference, as with a dead cube, doubling again and again would only be a nuisance.
            return values.shouldDouble() && !values.optional() ? CubeAction.DOUBLE : CubeAction.ROLL;
        }
        return values.answer();
    }
}
