package org.pipwright.engine.cube;

import java.util.Optional;
import java.util.OptionalDouble;
import org.pipwright.engine.bearoff.DoublingValue;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.ExactRace;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.bearoff.TwoSidedTable;
import org.pipwright.engine.bearoff.TwoSidedValue;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/**
 * Exact values of the cube actions in money play, where the two-sided table covers a position: no gammons are possible
 * there, so the Jacoby rule changes nothing, and beavers only ever answer doubles that were wrong.
 */
public final class ExactCube {
    private final EndgameTables tables;

    /**
     * Values from tables.
     *
     * @param tables opened at first need
     */
    public ExactCube(EndgameTables tables) {
        this.tables = tables;
    }

    /**
     * The values of a position.
     *
     * @param position an unfinished position
     * @param cube the cube, seen from the side on roll
     * @param stakes the rules agreed on
     * @return the values in points per unit of the present cube; empty if the table does not cover the position
     */
    public Optional<CubeValues> values(Position position, CubeState cube, MoneyStakes stakes) {
        boolean mayBeaver = stakes.mayBeaver(cube);
        return tables.exact(position).map(ExactRace::doubling).map(exact -> {
            double take = exact.doubleTake();
            return new CubeValues(
                    stakes.mayDouble(cube), mayBeaver, noDouble(exact, cube), take, 1, mayBeaver ? 2 * take : take);
        });
    }

    /**
     * The value of a position with the right cube action: a single look into the table.
     *
     * @param position an unfinished position
     * @param cube the cube, seen from the side on roll
     * @return points per unit of the present cube; empty if the table does not cover the position
     */
    public OptionalDouble best(Position position, CubeState cube) {
        double[] value = new double[1];
        return best(position.toPlanes(), 0, new CubeState[] {cube}, value)
                ? OptionalDouble.of(value[0])
                : OptionalDouble.empty();
    }

    /** The same for several cubes; returns whether the table covers the position. */
    boolean best(int[] planes, int at, CubeState[] cubes, double[] out) {
        if (tables.basis(planes, at) != Basis.EXACT) {
            return false;
        }
        TwoSidedTable table = tables.twoSided();
        SideIndex sides = table.index();
        TwoSidedValue value = table.value(sides.of(planes, at), sides.of(planes, at + Planes.SIDE));
        for (int i = 0; i < cubes.length; i++) {
            out[i] = best(value, cubes[i].owner());
        }
        return true;
    }

    private static double best(TwoSidedValue value, CubeOwner owner) {
        switch (owner) {
            case ME:
                return value.mine();
            case THEM:
                return value.theirs();
            default:
                return value.centred();
        }
    }

    private static double noDouble(DoublingValue exact, CubeState cube) {
        switch (cube.owner()) {
            case ME:
                return exact.noDoubleMine();
            case THEM:
                // The side on roll cannot double, now or by a double that is taken: the same game at half the stakes.
                return exact.doubleTake() / 2;
            default:
                return exact.noDoubleCentred();
        }
    }
}
