package org.pipwright.engine.drill;

import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.measures.Kleinman;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.search.CubeSearch;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.LookaheadSettings;

/** What a player thinks the cube actions are worth. An instance serves one thread. */
@FunctionalInterface
public interface CubeOpinion {
    /**
     * The values of a position.
     *
     * @param position an unfinished position before the roll
     * @param cube the cube, seen from the side on roll
     * @param terms what is played for, seen from the side on roll
     * @return values to the side on roll
     */
    CubeValues values(Position position, CubeState cube, CubeTerms terms);

    /**
     * The opinion of an evaluator.
     *
     * @param evaluator gives chances; used by this opinion only
     * @param lookahead future rolls to average over, 0 to {@value LookaheadSettings#MAX}
     * @return values by {@link CubeSearch}
     */
    static CubeOpinion of(PositionEvaluator evaluator, int lookahead) {
        CubeSearch search = new CubeSearch(Judgement.by(evaluator));
        return (position, cube, terms) -> search.values(position, cube, terms, lookahead);
    }

    /**
     * The opinion of a player for one thread: a net's, or of one that counts pips.
     *
     * @param player who plays
     * @return its opinion
     */
    static CubeOpinion of(Entrant player) {
        return player.valuers()
                .map(valuers -> of(valuers.get(), player.lookahead()))
                .orElseGet(CubeOpinion::byPips);
    }

    /**
     * The opinion of one who only counts pips: chances by {@link Kleinman} whatever the position, and no gammons.
     *
     * @return the opinion
     */
    static CubeOpinion byPips() {
        return (position, cube, terms) -> terms.curves(position, GammonShares.NONE, cube)
                .at(Kleinman.win(position.pips(), position.opponentPips()));
    }
}
