package org.pipwright.engine.cubeplay;

import java.util.function.Function;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubefulSearch;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Dice;

/**
 * Makes the play that leaves the most with the cube where it stands and at the score: points, or the chance to win the
 * match. With lookahead, only the best few without it are looked at. Serves one thread.
 */
public final class JudgingCheckerPlayer implements CheckerPlayer {
    private static final int KEPT = 4;

    private final CubefulSearch search;
    private final Function<Stakes, CubeTerms> terms;
    private final int lookahead;
    private double[] worth = new double[256];
    private float[] chances = new float[256 * Outcomes.COUNT];

    /**
     * A player.
     *
     * @param evaluator gives chances
     * @param terms how to judge under given stakes, seen from the side on roll
     * @param lookahead future rolls to average over, 0 to {@value CubefulSearch#MOST}
     */
    public JudgingCheckerPlayer(PositionEvaluator evaluator, Function<Stakes, CubeTerms> terms, int lookahead) {
        this.search = new CubefulSearch(evaluator);
        this.terms = terms;
        this.lookahead = lookahead;
    }

    @Override
    public int choose(int[] planes, PlayGenerator legal, Dice ties, CubeGame game) {
        int count = legal.size();
        if (count == 1) {
            return 0;
        }
        if (worth.length < count) {
            worth = new double[2 * count];
            chances = new float[worth.length * Outcomes.COUNT];
        }
        CubeTerms mine = terms.apply(game.stakes());
        search.worth(planes, legal.results(), count, game.cube(), mine, worth, chances);
        return lookahead == 0 ? largest(count) : deepest(legal.results(), count, game, mine);
    }

    private int deepest(int[] results, int count, CubeGame game, CubeTerms mine) {
        int best = -1;
        double most = Double.NEGATIVE_INFINITY;
        for (int n = 0; n < Math.min(KEPT, count); n++) {
            int i = largest(count);
            worth[i] = Double.NEGATIVE_INFINITY;
            double value = search.worth(results, i * Planes.STRIDE, game.cube(), mine, lookahead);
            if (value > most) {
                most = value;
                best = i;
            }
        }
        return best;
    }

    private int largest(int count) {
        int at = 0;
        for (int i = 1; i < count; i++) {
            at = worth[i] > worth[at] ? i : at;
        }
        return at;
    }
}
