package org.pipwright.engine.reduced;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.pipwright.engine.bearoff.DoublingValue;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.bearoff.TableProgress;
import org.pipwright.engine.bearoff.TwoSidedTable;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.position.Position;

/** Reduced games with the cube against plain value iteration, position by position, and against bear-off tables. */
class ReducedCubeTest {
    private static final ReducedGame ONE = new ReducedGame(1);

    /** What rolling is worth by the play generator of the full game, and then the decision, until nothing changes. */
    private static double[][] plain() {
        double[][] values = {ONE.freshValues(), ONE.freshValues(), ONE.freshValues()};
        double change = 1;
        while (change > 1e-13) {
            change = 0;
            for (int cell = 0; cell < ONE.cells(); cell++) {
                if (!ONE.unfinished(cell)) {
                    continue;
                }
                Position position = PlayByPlay.position(ONE, cell);
                double centred = PlayByPlay.backup(position, p -> values[0][ONE.cell(p)]);
                double mine = PlayByPlay.backup(position, p -> values[2][ONE.cell(p)]);
                double theirs = PlayByPlay.backup(position, p -> values[1][ONE.cell(p)]);
                double doubled = Math.min(1, 2 * theirs);
                double[] now = {Math.max(centred, doubled), Math.max(mine, doubled), theirs};
                for (int state = 0; state < now.length; state++) {
                    change = Math.max(change, Math.abs(now[state] - values[state][cell]));
                    values[state][cell] = now[state];
                }
            }
        }
        return values;
    }

    @Test
    void isWhatPlainValueIterationFinds() {
        double[][] plain = plain();
        ReducedCube solved = ReducedCube.solve(ONE, 2, 1e-13, ReducedSolver.Progress.NONE);
        int doubles = 0;
        for (int cell = 0; cell < ONE.cells(); cell++) {
            if (ONE.unfinished(cell)) {
                String name = PlayByPlay.position(ONE, cell).toString();
                CubeValues centred = solved.values(cell, CubeOwner.CENTRE);
                assertEquals(plain[0][cell], centred.best(), 1e-11, name);
                assertEquals(plain[1][cell], solved.values(cell, CubeOwner.ME).best(), 1e-11, name);
                assertEquals(plain[2][cell], solved.values(cell, CubeOwner.THEM).best(), 1e-11, name);
                assertFalse(solved.values(cell, CubeOwner.THEM).mayDouble());
                doubles += centred.shouldDouble() ? 1 : 0;
            }
        }
        assertTrue(doubles > 100, doubles + " doubles");
    }

    /** With one checker of two left to each side no gammon can be lost: the bear-off tables know these endings. */
    @Test
    void endingsOfTwoCheckersAreThoseOfTheTables() {
        ReducedGame two = new ReducedGame(2);
        ReducedCube solved = ReducedCube.solve(two, 2, 1e-9, ReducedSolver.Progress.NONE);
        SideIndex index = new SideIndex(6, 1);
        TwoSidedTable table = TwoSidedTable.build(index, 1, TableProgress.NONE);
        for (int mine = 1; mine <= 6; mine++) {
            for (int theirs = 1; theirs <= 6; theirs++) {
                int[] me = new int[26];
                int[] opponent = new int[26];
                me[0] = 1;
                opponent[0] = 1;
                me[mine] = 1;
                opponent[theirs] = 1;
                Position position = Position.of(me, opponent);
                int[] planes = position.toPlanes();
                int cell = two.cell(position);
                DoublingValue exact = table.doubling(index.of(planes, 0), index.of(planes, 4));
                CubeValues centred = solved.values(cell, CubeOwner.CENTRE);
                assertEquals(exact.noDoubleCentred(), centred.noDouble(), 1e-6);
                assertEquals(exact.doubleTake(), centred.doubleTake(), 1e-6);
                assertEquals(
                        exact.noDoubleMine(), solved.values(cell, CubeOwner.ME).noDouble(), 1e-6);
            }
        }
    }

    @Test
    void refusesAChangeThatCannotBeReached() {
        assertThrows(IllegalArgumentException.class, () -> ReducedCube.solve(ONE, 1, 0, ReducedSolver.Progress.NONE));
    }
}
