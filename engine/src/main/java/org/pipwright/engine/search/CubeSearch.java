package org.pipwright.engine.search;

import java.util.List;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.position.Position;

/**
 * Values of the cube actions, and choices of plays for what counts with the cube, by a {@link Lookahead} of one thread: each
 * of the 21 rolls is played for the most with the cube where it then stands, and what the opponent gets is its best cube
 * action with one roll less. Lookahead 0 is the model at the evaluator's chances. Terms given for equal stakes have to be
 * equal.
 */
public final class CubeSearch {
    private final PositionEvaluator evaluator;
    private final Lookahead search;

    /**
     * A search with the default settings.
     *
     * @param judgement what it judges positions with; used by this search only, or between its calls
     */
    public CubeSearch(Judgement judgement) {
        this(judgement, LookaheadSettings.DEFAULT);
    }

    /**
     * A search.
     *
     * @param judgement what it judges positions with; used by this search only, or between its calls
     * @param settings how candidates are pruned
     */
    public CubeSearch(Judgement judgement, LookaheadSettings settings) {
        evaluator = judgement.evaluator();
        search = new Lookahead(judgement, settings);
    }

    /**
     * The values of a position.
     *
     * @param position an unfinished position before the roll
     * @param cube the cube, seen from the side on roll
     * @param terms what is played for, seen from the side on roll
     * @param lookahead 0 to {@value LookaheadSettings#MAX}
     * @return values to the side on roll, exact where they are known
     */
    public CubeValues values(Position position, CubeState cube, CubeTerms terms, int lookahead) {
        LookaheadSettings.requireLookahead(lookahead);
        return terms.exact(position, cube)
                .orElseGet(() -> lookahead == 0
                        ? byModel(position, evaluator.evaluate(position), cube, terms)
                        : looked(position, cube, terms, lookahead));
    }

    /** By the model itself, not by its quick form. */
    static CubeValues byModel(Position position, Outcomes outcomes, CubeState cube, CubeTerms terms) {
        return terms.curves(position, GammonShares.of(outcomes), cube).at(outcomes.win());
    }

    private CubeValues looked(Position position, CubeState cube, CubeTerms terms, int lookahead) {
        List<CubeState> cubes = terms.stakes().cubesToRollWith(cube);
        Columns columns = search.columns(terms, cubes);
        Batch batch = Batch.of(position.toPlanes(), 0, columns.cubes());
        search.average(batch, 0, lookahead, columns);
        return terms.values(cube, state -> batch.rolling[columns.of(state)]);
    }

    /**
     * Chooses among the results of a roll what leaves the most with the cube where it stands, pruned by the root
     * settings.
     *
     * @param planes the position before the play, the mover's side first
     * @param results the results, as the play generator gives them
     * @param count number of results
     * @param cube the cube, seen from the mover
     * @param terms what is played for, seen from the mover
     * @param lookahead 0 to {@value LookaheadSettings#MAX}
     * @return index of the chosen result, the first of equals
     */
    public int choose(int[] planes, int[] results, int count, CubeState cube, CubeTerms terms, int lookahead) {
        return search.choose(planes, 0, results, count, lookahead, terms, cube);
    }
}
