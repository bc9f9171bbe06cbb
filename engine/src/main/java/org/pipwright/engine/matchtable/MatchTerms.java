package org.pipwright.engine.matchtable;

import java.util.Optional;
import java.util.OptionalDouble;
import org.pipwright.engine.cube.CubeCurves;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.CubeWalk;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.cube.WalkGame;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rules.GameResult;

/**
 * A game of a match: exact values in its last rolls, elsewhere a {@link MatchModel}. Values are chances to win the match, so
 * they need no unit of the cube.
 *
 * <p>{@link #values} has to be fast there: it solves the model on a grid of the two sides' shares of gammons (backgammons among
 * them), reads between the grid points in straight lines, and adds what backgammons change in proportion to their share.
 * On 390 positions of the first net's games at twelve scores from 1-away to 15-away that is within 0.0005 (root mean
 * square) of {@link #curves}, at worst 0.004 off.
 */
public final class MatchTerms implements CubeTerms {
    /**
     * The walk of a usual game: steps as in the shipped match table, measured on the first net's games.
     */
    public static final CubeWalk USUAL_WALK = new CubeWalk(50, 16);

    /** Cells of the grid of shares, from 0 to 1. */
    private static final int CELLS = 8;

    /** Which side wins backgammons at a grid point, one cell's worth of them: nobody, this side or the other. */
    private static final int NONE = 0;

    private static final int MINE = 1;
    private static final int THEIRS = 2;
    private static final int KINDS = 3;

    private final MatchModel model;
    private final WalkGame[] grid = new WalkGame[(CELLS + 1) * (CELLS + 1) * KINDS];
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
        model = new MatchModel(stakes, table, USUAL_WALK);
    }

    @Override
    public Stakes stakes() {
        return model.stakes();
    }

    @Override
    public CubeCurves curves(Position position, GammonShares shares, CubeState cube) {
        return model.curves(shares, cube);
    }

    @Override
    public Optional<CubeValues> exact(Position position, CubeState cube) {
        return model.table().endings().values(position, cube, model.stakes());
    }

    @Override
    public OptionalDouble known(Position position, CubeState cube) {
        return model.table().endings().best(position, cube, model.stakes());
    }

    @Override
    public double best(Position position, Outcomes outcomes, CubeState cube) {
        OptionalDouble known = known(position, cube);
        return known.isPresent() ? known.getAsDouble() : quick(outcomes, cube).best();
    }

    @Override
    public CubeValues values(Position position, Outcomes outcomes, CubeState cube) {
        return exact(position, cube).orElseGet(() -> quick(outcomes, cube));
    }

    private CubeValues quick(Outcomes outcomes, CubeState cube) {
        GammonShares shares = GammonShares.of(outcomes);
        boolean mayDouble = model.stakes().mayDouble(cube);
        double roll = rolling(cube, outcomes.win(), shares);
        double take = mayDouble ? rolling(cube.taken(), outcomes.win(), shares) : roll;
        return new CubeValues(mayDouble, false, roll, take, after(cube.value()), take);
    }

    @Override
    public boolean known(int[] planes, int at, CubeState[] cubes, double[] out) {
        // Cheap where most positions end: no ending has a side with all its checkers.
        return (Planes.occupied(planes, at) & Planes.occupied(planes, at + Planes.SIDE) & 1) != 0
                && CubeTerms.super.known(planes, at, cubes, out);
    }

    @Override
    public void rolling(int[] planes, int at, float[] chances, int chancesAt, CubeState[] cubes, double[] out) {
        GammonShares shares = GammonShares.of(chances, chancesAt);
        double win = (double) chances[chancesAt] + chances[chancesAt + 1] + chances[chancesAt + 2];
        for (int i = 0; i < cubes.length; i++) {
            out[i] = rolling(cubes[i], win, shares);
        }
    }

    /** A cube that wins the match for either side is of no use to anybody, whoever owns it. */
    @Override
    public CubeState alike(CubeState cube) {
        int most =
                Math.max(model.stakes().score().mine(), model.stakes().score().theirs());
        if (cube.value() < most) {
            return cube;
        }
        int least = Integer.highestOneBit(most);
        int value = least == most ? least : 2 * least;
        return new CubeState(value, value == 1 ? CubeOwner.CENTRE : CubeOwner.THEM);
    }

    private double rolling(CubeState cube, double win, GammonShares shares) {
        double mine = (shares.winGammon() + shares.winBackgammon()) * CELLS;
        double theirs = (shares.loseGammon() + shares.loseBackgammon()) * CELLS;
        int row = Math.min((int) mine, CELLS - 1);
        double down = mine - row;
        double gammons = down <= 0
                ? inRow(row, theirs, cube, win)
                : down >= 1
                        ? inRow(row + 1, theirs, cube, win)
                        : (1 - down) * inRow(row, theirs, cube, win) + down * inRow(row + 1, theirs, cube, win);
        return gammons + backgammons(mine, theirs, cube, win, shares);
    }

    /** A straight line between two grid points; what it does not need is not solved. */
    private double inRow(int row, double theirs, CubeState cube, double win) {
        int column = Math.min((int) theirs, CELLS - 1);
        double across = theirs - column;
        if (across <= 0) {
            return at(row, column, NONE, cube, win);
        }
        return across >= 1
                ? at(row, column + 1, NONE, cube, win)
                : (1 - across) * at(row, column, NONE, cube, win) + across * at(row, column + 1, NONE, cube, win);
    }

    /** What backgammons change: in proportion to their shares, at the nearest grid point that has room for them. */
    private double backgammons(double mine, double theirs, CubeState cube, double win, GammonShares shares) {
        int row = (int) Math.min(Math.max(Math.round(mine), 1), CELLS);
        int column = (int) Math.min(Math.max(Math.round(theirs), 1), CELLS);
        double change = 0;
        if (shares.winBackgammon() > 0) {
            change += CELLS
                    * shares.winBackgammon()
                    * (at(row, column, MINE, cube, win) - at(row, column, NONE, cube, win));
        }
        if (shares.loseBackgammon() > 0) {
            change += CELLS
                    * shares.loseBackgammon()
                    * (at(row, column, THEIRS, cube, win) - at(row, column, NONE, cube, win));
        }
        return change;
    }

    private double at(int row, int column, int backgammons, CubeState cube, double win) {
        int index = (row * (CELLS + 1) + column) * KINDS + backgammons;
        if (grid[index] == null) {
            double part = 1.0 / CELLS;
            double mine = backgammons == MINE ? part : 0;
            double theirs = backgammons == THEIRS ? part : 0;
            grid[index] = model.game(new GammonShares(row * part - mine, mine, column * part - theirs, theirs));
        }
        return grid[index].rolling(cube, true, win);
    }

    /** My chance to win the match once the game has ended, points negative if I lose them. */
    double after(int points) {
        return model.table().chanceAfter(model.stakes().score(), points);
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
            other = new MatchTerms(model.stakes().swapped(), model.table());
            other.other = this;
        }
        return other;
    }
}
