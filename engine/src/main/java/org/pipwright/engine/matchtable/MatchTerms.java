package org.pipwright.engine.matchtable;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.pipwright.engine.cube.CubeCurves;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.CubeWalk;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rules.GameResult;
import org.pipwright.engine.score.MatchScore;

/**
 * A game of a match: exact values in its last rolls, elsewhere a {@link MatchModel}. Values are chances to win the match, so
 * they need no unit of the cube.
 *
 * <p>{@link #values} has to be fast there and reads a {@link ShareGrid}. On 390 positions of the first net's games at twelve
 * scores from 1-away to 15-away that is within 0.0005 (root mean square) of {@link #curves}, at worst 0.004 off.
 */
public final class MatchTerms implements CubeTerms {
    private final MatchStakes stakes;
    private final MatchTable table;
    private final Map<CubeWalk, ShareGrid> grids = new HashMap<>();
    private MatchTerms other;

    /**
     * Terms.
     *
     * @param stakes the score, seen from the side on roll
     * @param table chances after the game
     * @throws IllegalArgumentException if the score is beyond the table
     */
    public MatchTerms(MatchStakes stakes, MatchTable table) {
        table.chance(stakes.score());
        this.stakes = stakes;
        this.table = table;
    }

    @Override
    public Stakes stakes() {
        return stakes;
    }

    @Override
    public CubeCurves curves(Position position, GammonShares shares, CubeState cube) {
        CubeUse use = CubeUse.of(position.toPlanes(), 0);
        return new MatchModel(stakes, table, use).curves(shares, cube);
    }

    @Override
    public Optional<CubeValues> exact(Position position, CubeState cube) {
        return table.endings().values(position, cube, stakes);
    }

    @Override
    public OptionalDouble known(Position position, CubeState cube) {
        return table.endings().best(position, cube, stakes);
    }

    @Override
    public double best(Position position, Outcomes outcomes, CubeState cube) {
        OptionalDouble known = known(position, cube);
        return known.isPresent()
                ? known.getAsDouble()
                : quick(position, outcomes, cube).best();
    }

    @Override
    public CubeValues values(Position position, Outcomes outcomes, CubeState cube) {
        return exact(position, cube).orElseGet(() -> quick(position, outcomes, cube));
    }

    private CubeValues quick(Position position, Outcomes outcomes, CubeState cube) {
        GammonShares shares = GammonShares.of(outcomes);
        CubeUse use = CubeUse.of(position.toPlanes(), 0);
        return values(cube, state -> rolling(use, state, outcomes.win(), shares));
    }

    /**
     * {@inheritDoc}
     *
     * <p>A double gains nothing for a side that wins the match with this game as it is, and costs nothing if the other side
     * does. Values that were read between the points of a grid, or found by lookahead, are kept to that.
     */
    @Override
    public CubeValues values(CubeState cube, ToDoubleFunction<CubeState> rolling) {
        CubeValues found = CubeTerms.super.values(cube, rolling);
        boolean useless = stakes.score().mine() <= cube.value();
        boolean free = stakes.score().theirs() <= cube.value();
        if (useless == free || !found.mayDouble()) {
            return found;
        }
        double take = found.doubleTake();
        double roll = useless ? Math.max(found.noDouble(), take) : Math.min(found.noDouble(), take);
        return new CubeValues(true, false, roll, take, found.doublePass(), take);
    }

    @Override
    public void expect(int[] planes, int count) {
        List<Position> endings = new ArrayList<>();
        for (int at = 0; at < count * Planes.STRIDE; at += Planes.STRIDE) {
            if (mayBeEnding(planes, at)) {
                endings.add(Position.ofPlanes(planes, at));
            }
        }
        table.endings().expect(endings, stakes.score());
    }

    @Override
    public boolean known(int[] planes, int at, CubeState[] cubes, double[] out) {
        return mayBeEnding(planes, at) && CubeTerms.super.known(planes, at, cubes, out);
    }

    /** Cheap where most positions end: no ending has a side with all its checkers. */
    private static boolean mayBeEnding(int[] planes, int at) {
        return (Planes.occupied(planes, at) & Planes.occupied(planes, at + Planes.SIDE) & 1) != 0;
    }

    @Override
    public void rolling(int[] planes, int at, float[] chances, int chancesAt, CubeState[] cubes, double[] out) {
        GammonShares shares = GammonShares.of(chances, chancesAt);
        double win = (double) chances[chancesAt] + chances[chancesAt + 1] + chances[chancesAt + 2];
        CubeUse use = CubeUse.of(planes, at);
        for (int i = 0; i < cubes.length; i++) {
            out[i] = rolling(use, cubes[i], win, shares);
        }
    }

    /** A cube that wins the match for either side is of no use to anybody, whoever owns it. */
    @Override
    public CubeState alike(CubeState cube) {
        int most = Math.max(stakes.score().mine(), stakes.score().theirs());
        if (cube.value() < most) {
            return cube;
        }
        int least = Integer.highestOneBit(most);
        int value = least == most ? least : 2 * least;
        return new CubeState(value, value == 1 ? CubeOwner.CENTRE : CubeOwner.THEM);
    }

    private double rolling(CubeUse use, CubeState cube, double win, GammonShares shares) {
        MatchScore score = stakes.score();
        ShareGrid grid = grids.computeIfAbsent(use.walk(), walk -> new ShareGrid(score, table, walk));
        double dead = new MatchPayoffs(table, score, shares).dead(cube, win);
        return use.rolling(score, cube, win, dead, grid.rolling(cube, win, shares));
    }

    /** My chance to win the match once the game has ended, points negative if I lose them. */
    double after(int points) {
        return table.chanceAfter(stakes.score(), points);
    }

    @Override
    public double won(GameResult result, CubeState cube) {
        return after(result.points(cube.value()));
    }

    @Override
    public double ended(int points) {
        return after(points);
    }

    /**
     * {@inheritDoc}
     *
     * <p>A table rounded to few digits may not tell a single game won from one lost. The cube is then taken at the next
     * height at which it does, and the difference shared among as many points; the match itself ends at some height.
     */
    @Override
    public double point(CubeState cube) {
        double point = CubeTerms.super.point(cube);
        for (int times = 2; point <= NOISE; times *= 2) {
            int points = times * cube.value();
            point = (after(points) - after(-points)) / (2 * times);
        }
        return point;
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
    public double inAll(double value, CubeState cube) {
        return value;
    }

    @Override
    public MatchTerms swapped() {
        if (other == null) {
            other = new MatchTerms(stakes.swapped(), table);
            other.other = this;
        }
        return other;
    }
}
