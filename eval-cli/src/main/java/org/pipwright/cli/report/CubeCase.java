package org.pipwright.cli.report;

import java.util.Optional;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.CubeWindow;
import org.pipwright.engine.cube.CubeWindows;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.GammonValues;
import org.pipwright.engine.cube.Market;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rules.GameResult;

/**
 * A cube decision as it is explained. Everything is seen from the side on roll.
 *
 * @param position before the roll
 * @param cube before a double
 * @param stakes what is played for
 * @param values of the cube actions
 * @param chances of the game
 * @param basis what they rest on
 * @param terms what gammons and cubes are worth
 * @param market what the next two rolls do; empty if nobody asked
 */
record CubeCase(
        Position position,
        CubeState cube,
        Stakes stakes,
        CubeValues values,
        Outcomes chances,
        Basis basis,
        CubeTerms terms,
        Optional<Market> market) {

    /** Take point and doubling window; empty where exact values say more, and where a double is useless. */
    Optional<CubeWindow> window() {
        return CubeWindows.of(terms, position, GammonShares.of(chances), cube);
    }

    /** Whether the values are exact, and with them the window, if there is one. */
    boolean exact() {
        return terms.exact(position, cube).isPresent();
    }

    /** Whether the opponent bears off with any roll, so that the side on roll wins now or never. */
    boolean lastRoll() {
        return exact() && CubeWindows.lastRoll(position);
    }

    /** What gammons are worth with the cube as it is. */
    Optional<GammonValues> gammonsNow() {
        return GammonValues.of(terms, cube);
    }

    /** What gammons are worth if the double is taken. */
    Optional<GammonValues> gammonsDoubled() {
        return GammonValues.of(terms, cube.taken());
    }

    boolean match() {
        return stakes instanceof MatchStakes;
    }

    /**
     * The chance with which the opponent could take if nobody ever turned the cube again: gain and loss against a pass, at
     * this position's share of gammons.
     *
     * @return 0 to 1; empty if nothing depends on the game
     */
    Optional<Double> deadTakePoint() {
        GammonShares shares = GammonShares.of(chances);
        double won = mean(shares.winGammon(), shares.winBackgammon(), terms, false);
        double lost = mean(shares.loseGammon(), shares.loseBackgammon(), terms.swapped(), true);
        double pass = terms.won(GameResult.SINGLE, cube);
        return won - lost <= CubeTerms.NOISE
                ? Optional.empty()
                : Optional.of(Math.max(0, Math.min(1, (won - pass) / (won - lost))));
    }

    /** Value to the side on roll of a game that one side wins with the taken cube. */
    private double mean(double gammons, double backgammons, CubeTerms winner, boolean other) {
        CubeState taken = other ? cube.taken().swapped() : cube.taken();
        double value = (1 - gammons - backgammons) * winner.won(GameResult.SINGLE, taken)
                + gammons * winner.won(GameResult.GAMMON, taken)
                + backgammons * winner.won(GameResult.BACKGAMMON, taken);
        return terms.ofTaken(other ? terms.toOther(value) : value);
    }

    /** Whether the side on roll wins the match with this game as it is, so that a double gains it nothing. */
    boolean winsAnyway() {
        return match() && ((MatchStakes) stakes).winsAnyway(cube);
    }

    /** Whether the opponent, having taken, has no use for the cube: the game wins it the match. */
    boolean deadForTaker() {
        return match()
                && ((MatchStakes) stakes).swapped().winsAnyway(cube.taken().swapped());
    }

    /** Whether the opponent, having taken, loses the match with this game, so that turning the cube again costs it nothing. */
    boolean freeForTaker() {
        return match() && ((MatchStakes) stakes).winsAnyway(cube.taken());
    }

    /** Whether the side on roll loses the match with this game, so that a double costs it nothing. */
    boolean freeForDoubler() {
        return match() && ((MatchStakes) stakes).swapped().winsAnyway(cube.swapped());
    }
}
