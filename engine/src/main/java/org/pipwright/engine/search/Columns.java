package org.pipwright.engine.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.Sieve;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.rules.GameResult;

/**
 * What a search keeps of a position before a roll, side by side: the six chances with both sides playing for points without
 * the cube, and for each of some cubes the value to the side on roll of rolling with that cube. One network call serves
 * all of them. Replies to a roll are worth something else in each column; column {@value #CUBELESS} is cubeless points,
 * column 1 + i belongs to cube i.
 *
 * <p>A column depends on no other: what a search finds in it is the same whichever others are asked for along with it.
 * Serves one thread.
 */
final class Columns implements Sieve.Worth {
    /** The column of points without the cube. */
    static final int CUBELESS = 0;

    /** No cube at all. */
    static final Columns NONE = new Columns(0);

    private static final Comparator<CubeState> ORDER =
            Comparator.comparingInt(CubeState::value).thenComparing(CubeState::owner);

    private static final int RESULTS = GameResult.values().length;

    private final int id;
    private final CubeState[] cubes;
    private CubeTerms mine;
    private CubeTerms theirs;
    private ColumnSet set;
    /** What a point is worth in each column. */
    private double[] points = {1};
    /** What a win of each size is worth with each cube. */
    private double[] won;
    /** The cubes as the opponent sees them after the play. */
    private CubeState[] replied;
    /** Where the values that an opponent's best cube action needs stand in its columns; -1 for what it may not do. */
    private int[] rolls;

    private int[] takes;
    private int[] beavers;
    private double[] passes;
    private Columns next;
    private double[] theirValues;
    private double[] found;
    private final int[] child = new int[Planes.STRIDE];
    private final float[] theirChances = new float[Outcomes.COUNT];

    private Columns(int id, CubeState... cubes) {
        this.id = id;
        this.cubes = cubes;
    }

    /**
     * Columns of some cubes.
     *
     * @param id what the memory tells these from others by
     * @param mine what is played for, seen from the side on roll
     * @param cubes the cubes, each standing for itself, in the order of {@link #inOrder}
     * @param set makes the columns that follow
     */
    Columns(int id, CubeTerms mine, List<CubeState> cubes, ColumnSet set) {
        this(id, cubes.toArray(new CubeState[0]));
        this.mine = mine;
        this.theirs = mine.swapped();
        this.set = set;
        int size = cubes.size();
        points = new double[1 + size];
        points[CUBELESS] = 1;
        won = new double[size * RESULTS];
        replied = new CubeState[size];
        found = new double[size];
        for (int i = 0; i < size; i++) {
            points[1 + i] = mine.point(this.cubes[i]);
            replied[i] = this.cubes[i].swapped();
            for (GameResult result : GameResult.values()) {
                won[i * RESULTS + result.ordinal()] = mine.won(result, this.cubes[i]);
            }
        }
    }

    /** Cubes by value and owner, those that stand for others once. */
    static List<CubeState> inOrder(CubeTerms terms, List<CubeState> cubes) {
        Set<CubeState> distinct = new TreeSet<>(ORDER);
        cubes.forEach(cube -> distinct.add(terms.alike(cube)));
        return List.copyOf(distinct);
    }

    int id() {
        return id;
    }

    /** Number of cubes. */
    int cubes() {
        return cubes.length;
    }

    /** Number of columns a reply has. */
    @Override
    public int width() {
        return 1 + cubes.length;
    }

    /** Index of a cube, which may be one that another stands for. */
    int of(CubeState cube) {
        CubeState wanted = mine.alike(cube);
        for (int i = 0; i < cubes.length; i++) {
            if (cubes[i].equals(wanted)) {
                return i;
            }
        }
        throw new IllegalArgumentException("no column for the cube " + cube);
    }

    /** How much less than the best of a column may be within so many points. */
    @Override
    public double least(int column, double best, float within) {
        // Cubeless points are floats, and so is the bound.
        return column == CUBELESS ? (float) best - within : best - within * points[column];
    }

    /** The columns that the opponent's best cube actions need after a play. */
    Columns next() {
        if (next == null && cubes.length == 0) {
            next = this;
        } else if (next == null) {
            next = follow();
        }
        return next;
    }

    private Columns follow() {
        List<CubeState> needed = new ArrayList<>();
        for (CubeState cube : replied) {
            needed.addAll(theirs.stakes().cubesToRollWith(cube));
        }
        Columns columns = set.of(theirs, needed);
        rolls = new int[replied.length];
        takes = new int[replied.length];
        beavers = new int[replied.length];
        passes = new double[replied.length];
        for (int i = 0; i < replied.length; i++) {
            CubeState cube = replied[i];
            boolean mayDouble = theirs.stakes().mayDouble(cube);
            boolean mayBeaver = mayDouble && theirs.stakes().mayBeaver(cube);
            rolls[i] = columns.of(cube);
            takes[i] = mayDouble ? columns.of(cube.taken()) : -1;
            beavers[i] = mayBeaver ? columns.of(cube.beavered()) : -1;
            passes[i] = theirs.won(GameResult.SINGLE, cube);
        }
        theirValues = new double[columns.cubes()];
        return columns;
    }

    /**
     * {@inheritDoc}
     *
     * <p>Nothing is looked ahead.
     */
    @Override
    public void worth(int[] results, int at, float[] chances, int chancesAt, double[] worth, int worthAt) {
        worth[worthAt] = Chances.equity(chances, chancesAt);
        if (cubes.length == 0) {
            return;
        }
        Planes.copySwapped(results, at, child, 0);
        if (over(child, 0)) {
            int result = GameResult.of(child, 0).ordinal();
            for (int i = 0; i < cubes.length; i++) {
                worth[worthAt + 1 + i] = won[i * RESULTS + result];
            }
        } else if (theirs.known(child, 0, replied, found)) {
            for (int i = 0; i < cubes.length; i++) {
                worth[worthAt + 1 + i] = mine.toOther(found[i]);
            }
        } else {
            Columns after = next();
            System.arraycopy(chances, chancesAt, theirChances, 0, Outcomes.COUNT);
            Chances.swap(theirChances, 0);
            theirs.rolling(child, 0, theirChances, 0, after.cubes, theirValues);
            fold(theirValues, 0, worth, worthAt);
        }
    }

    /** Tells those who value the results of a roll's plays that all of them will be asked about. */
    void expect(int[] results, int count) {
        if (cubes.length > 0 && count > 1) {
            int[] replies = new int[count * Planes.STRIDE];
            for (int i = 0; i < count; i++) {
                Planes.copySwapped(results, i * Planes.STRIDE, replies, i * Planes.STRIDE);
            }
            theirs.expect(replies, count);
        }
    }

    /** Whether the values of a position are known exactly, whatever is done with the cube. */
    boolean known(int[] planes, int at) {
        return mine.known(planes, at, cubes, found);
    }

    /**
     * Writes what a reply is worth, given what position k of a batch, the one that it leads to, is worth to the opponent.
     * Games that are over and what is known exactly stay as they are: {@link #worth} has said it already.
     */
    void fold(Batch batch, int k, double[] worth, int worthAt) {
        int at = k * Planes.STRIDE;
        if (!over(batch.planes, at) && !theirs.known(batch.planes, at, replied, found)) {
            fold(batch.rolling, k * batch.cubes, worth, worthAt);
        }
    }

    /** Whether the game is over, the side on roll having lost. */
    private static boolean over(int[] planes, int at) {
        return (Planes.occupied(planes, at + Planes.SIDE) & Planes.ON_BOARD) == 0;
    }

    private void fold(double[] rolling, int rollingAt, double[] worth, int worthAt) {
        next();
        for (int i = 0; i < cubes.length; i++) {
            double value = rolling[rollingAt + rolls[i]];
            if (takes[i] >= 0) {
                value = Math.max(value, doubled(i, rolling, rollingAt));
            }
            worth[worthAt + 1 + i] = mine.toOther(value);
        }
    }

    /** What a double brings the opponent, answered in the best way. */
    private double doubled(int i, double[] rolling, int rollingAt) {
        double least = Math.min(theirs.ofTaken(rolling[rollingAt + takes[i]]), passes[i]);
        return beavers[i] < 0
                ? least
                : Math.min(least, theirs.ofTaken(theirs.ofTaken(rolling[rollingAt + beavers[i]])));
    }
}
