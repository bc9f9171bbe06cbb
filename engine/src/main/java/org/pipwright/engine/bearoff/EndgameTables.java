package org.pipwright.engine.bearoff;

import java.util.Optional;
import java.util.function.Supplier;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/**
 * A one-sided and a two-sided table, opened or built when first needed. What they cover is known without opening them.
 * Shared by threads.
 */
@PublicApi
public final class EndgameTables {
    /** The standard one-sided table: 15 checkers on points 1 to 6. */
    public static final SideIndex HOME = new SideIndex(6, 15);

    /** The standard two-sided table: 6 checkers a side on points 1 to 6. */
    public static final SideIndex LAST_SIX = new SideIndex(6, 6);

    /** Knows what the standard tables cover, and no more. */
    private static final EndgameTables COVERAGE = new EndgameTables(HOME, () -> null, LAST_SIX, () -> null, null);

    /** Own points 19 to 24 and the bar: a loser who stands there with no checker off loses a backgammon. */
    private static final int BACKGAMMON = 0x7F << 19;

    private final SideIndex sides;
    private final SideIndex pairs;
    private final Once<OneSidedTable> oneSided;
    private final Once<TwoSidedTable> twoSided;
    private final TableFolder folder;

    /** Something made when it is first asked for. */
    private static final class Once<T> {
        private final Supplier<T> maker;
        private volatile T made;

        Once(Supplier<T> maker) {
            this.maker = maker;
        }

        T get() {
            T value = made;
            return value != null ? value : make();
        }

        private synchronized T make() {
            if (made == null) {
                made = maker.get();
            }
            return made;
        }
    }

    private EndgameTables(
            SideIndex sides,
            Supplier<OneSidedTable> oneSided,
            SideIndex pairs,
            Supplier<TwoSidedTable> twoSided,
            TableFolder folder) {
        this.sides = sides;
        this.pairs = pairs;
        this.oneSided = new Once<>(oneSided);
        this.twoSided = new Once<>(twoSided);
        this.folder = folder;
    }

    /**
     * Tables at hand.
     *
     * @param oneSided distributions
     * @param twoSided exact values
     * @return both
     */
    public static EndgameTables of(OneSidedTable oneSided, TwoSidedTable twoSided) {
        return new EndgameTables(oneSided.index(), () -> oneSided, twoSided.index(), () -> twoSided, null);
    }

    /**
     * The standard tables, {@link #HOME} and {@link #LAST_SIX}, the same on every machine.
     *
     * @param folder where they are kept
     * @param threads threads to build with, at least 1
     * @param listener told what happens
     * @return tables that are opened or built at first need
     */
    public static EndgameTables standard(TableFolder folder, int threads, TableListener listener) {
        return kept(HOME, LAST_SIX, folder, threads, listener);
    }

    /**
     * The largest tables for the full game that the folder holds whole, at least the standard ones. Larger ones are
     * read in full and damaged ones left out, as the listener is told.
     *
     * @param folder where they are kept
     * @param threads threads to build with, at least 1
     * @param listener told what happens
     * @return tables that are opened or built at first need
     */
    public static EndgameTables largest(TableFolder folder, int threads, TableListener listener) {
        return kept(
                LargestTable.in(folder, TableKind.ONE_SIDED, HOME, listener),
                LargestTable.in(folder, TableKind.TWO_SIDED, LAST_SIX, listener),
                folder,
                threads,
                listener);
    }

    private static EndgameTables kept(
            SideIndex sides, SideIndex pairs, TableFolder folder, int threads, TableListener listener) {
        return new EndgameTables(
                sides,
                () -> folder.oneSided(sides, threads, listener),
                pairs,
                () -> folder.twoSided(pairs, threads, listener),
                folder);
    }

    /**
     * Where these tables are kept.
     *
     * @return the folder; empty for tables at hand
     */
    public Optional<TableFolder> folder() {
        return Optional.ofNullable(folder);
    }

    /**
     * The distributions.
     *
     * @return the one-sided table
     */
    public OneSidedTable oneSided() {
        return oneSided.get();
    }

    /**
     * The exact values.
     *
     * @return the two-sided table
     */
    public TwoSidedTable twoSided() {
        return twoSided.get();
    }

    /**
     * Highest point on which a side may have checkers for its distributions to be known.
     *
     * @return 6 to 24
     */
    public int points() {
        return sides.points();
    }

    /**
     * What the tables can say about a position; opens none.
     *
     * @param planes array that holds the position, unfinished
     * @param at index of its first plane
     * @return EXACT or DISTRIBUTIONS if a table covers it, else ESTIMATED
     */
    public Basis basis(int[] planes, int at) {
        int theirs = at + Planes.SIDE;
        if (!sides.covers(planes, at) || !sides.covers(planes, theirs)) {
            return Basis.ESTIMATED;
        }
        boolean gammonPossible = (Planes.occupied(planes, at) & Planes.occupied(planes, theirs) & 1) == 0;
        if (!gammonPossible && pairs.covers(planes, at) && pairs.covers(planes, theirs)) {
            return Basis.EXACT;
        }
        boolean near = 2 * sides.points() <= 25;
        return near || passed(planes, at) ? Basis.DISTRIBUTIONS : Basis.ESTIMATED;
    }

    /**
     * The exact values of a position.
     *
     * @param position an unfinished position
     * @return the values; empty if the two-sided table does not cover the position
     */
    public Optional<ExactRace> exact(Position position) {
        int[] planes = position.toPlanes();
        if (basis(planes, 0) != Basis.EXACT) {
            return Optional.empty();
        }
        int mine = twoSided().index().of(planes, 0);
        int theirs = twoSided().index().of(planes, Planes.SIDE);
        return Optional.of(
                new ExactRace(twoSided().value(mine, theirs), twoSided().doubling(mine, theirs)));
    }

    /**
     * What the standard tables can say about a position; opens none.
     *
     * @param position any position; the outcome of a finished game is exact
     * @return EXACT or DISTRIBUTIONS if a standard table covers it, else ESTIMATED
     */
    public static Basis standardBasis(Position position) {
        return position.finished() ? Basis.EXACT : COVERAGE.basis(position.toPlanes(), 0);
    }

    /** Whether the sides have passed each other and a backgammon is impossible. */
    private static boolean passed(int[] planes, int at) {
        return !Planes.contact(planes, at) && !far(planes, at) && !far(planes, at + Planes.SIDE);
    }

    private static boolean far(int[] planes, int side) {
        int occupied = Planes.occupied(planes, side);
        return (occupied & BACKGAMMON) != 0 && (occupied & 1) == 0;
    }
}
