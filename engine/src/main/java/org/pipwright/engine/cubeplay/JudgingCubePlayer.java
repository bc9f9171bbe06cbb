package org.pipwright.engine.cubeplay;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.position.Position;

/** Does what its terms find right at its evaluator's chances, without lookahead. */
public final class JudgingCubePlayer implements CubePlayer {
    private final PositionEvaluator evaluator;
    private final Function<Stakes, CubeTerms> terms;
    private final Map<Stakes, CubeTerms> known = new HashMap<>();

    /**
     * A player.
     *
     * @param evaluator gives chances
     * @param terms how to judge under given stakes, seen from the side on roll; asked once for each
     */
    public JudgingCubePlayer(PositionEvaluator evaluator, Function<Stakes, CubeTerms> terms) {
        this.evaluator = evaluator;
        this.terms = terms;
    }

    @Override
    public CubeAction act(Position position, CubeGame game) {
        CubeValues values =
                known.computeIfAbsent(game.stakes(), terms).values(position, evaluator.evaluate(position), game.cube());
        if (game.actions().contains(CubeAction.ROLL)) {
            return values.shouldDouble() ? CubeAction.DOUBLE : CubeAction.ROLL;
        }
        return values.answer();
    }
}
