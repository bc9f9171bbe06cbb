package org.pipwright.engine.search;

import java.util.List;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Position;

/**
 * Values of the cube actions by a {@link Lookahead} of one thread: each of the 21 rolls is played for the most with the cube
 * where it then stands, and what the opponent gets is its best cube action with one roll less. Lookahead 0 is the model at
 * the evaluator's chances. Terms given for equal stakes have to be equal.
 */
public final class CubeSearch {
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
        this(new Lookahead(judgement, settings));
    }

    /**
     * The same by a search that is used for something else between its calls.
     *
     * @param search what it looks ahead with
     */
    public CubeSearch(Lookahead search) {
        this.search = search;
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
                        ? byModel(position, chances(position), cube, terms)
                        : looked(position, cube, terms, lookahead));
    }

    private Outcomes chances(Position position) {
        float[] six = new float[Outcomes.COUNT];
        search.evaluate(position.toPlanes(), 0, 0, six, 0);
        return Outcomes.of(six, 0);
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
}
