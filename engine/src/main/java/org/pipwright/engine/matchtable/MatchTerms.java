package org.pipwright.engine.matchtable;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.pipwright.engine.cube.CubeCurves;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.CubeWalk;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rules.GameResult;

/**
 * A game of a match, by a {@link MatchModel}. Values are chances to win the match, so they need no unit of the cube.
 * {@link #values} rounds the shares of gammons to a thirty-second, so that it can use what it has solved before.
 */
public final class MatchTerms implements CubeTerms {
    /**
     * The walk of a usual game: steps as in the shipped match table, measured on the first net's games.
     */
    public static final CubeWalk USUAL_WALK = new CubeWalk(50, 16);

    private static final double PARTS = 32;

    private final MatchModel model;
    private final Map<Solved, CubeCurves> solved = new HashMap<>();
    private MatchTerms other;

    private record Solved(GammonShares shares, CubeState cube) {}

    /**
     * Terms.
     *
     * @param stakes the score, seen from the side on roll
     * @param table chances after the game
     * @throws IllegalArgumentException if the score is beyond the table
     */
    public MatchTerms(MatchStakes stakes, MatchTable table) {
        table.chance(stakes.score());
        model = new MatchModel(stakes, table, USUAL_WALK);
    }

    @Override
    public CubeCurves curves(Position position, GammonShares shares, CubeState cube) {
        return model.curves(shares, cube);
    }

    @Override
    public Optional<CubeValues> exact(Position position, CubeState cube) {
        return Optional.empty();
    }

    @Override
    public CubeValues values(Position position, Outcomes outcomes, CubeState cube) {
        GammonShares shares = rounded(GammonShares.of(outcomes));
        return solved.computeIfAbsent(new Solved(shares, cube), key -> model.curves(shares, cube))
                .at(outcomes.win());
    }

    private static GammonShares rounded(GammonShares shares) {
        return new GammonShares(
                rounded(shares.winGammon()),
                Math.min(rounded(shares.winBackgammon()), 1 - rounded(shares.winGammon())),
                rounded(shares.loseGammon()),
                Math.min(rounded(shares.loseBackgammon()), 1 - rounded(shares.loseGammon())));
    }

    private static double rounded(double share) {
        return Math.round(share * PARTS) / PARTS;
    }

    @Override
    public double won(GameResult result, CubeState cube) {
        return model.table().chanceAfter(model.stakes().score(), result.points(cube.value()));
    }

    @Override
    public double toOther(double value) {
        return 1 - value;
    }

    @Override
    public double ofTaken(double value) {
        return value;
    }

    @Override
    public MatchTerms swapped() {
        if (other == null) {
            other = new MatchTerms(model.stakes().swapped(), model.table());
            other.other = this;
        }
        return other;
    }
}
