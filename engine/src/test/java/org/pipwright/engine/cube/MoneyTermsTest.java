package org.pipwright.engine.cube;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.OneSidedTable;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.bearoff.TableProgress;
import org.pipwright.engine.bearoff.TwoSidedTable;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;

/** Values in money play: the quick ways to them against the plain ones, and units by hand. */
@Tag("fast")
class MoneyTermsTest {
    private static final CubeState MINE = new CubeState(4, CubeOwner.ME);
    private static final CubeState THEIRS = new CubeState(4, CubeOwner.THEM);
    private static final CubeState[] CUBES = {CubeState.START, MINE, THEIRS};
    private static final float[] CHANCES = {0.5f, 0.125f, 0.0625f, 0.1875f, 0.09375f, 0.03125f};
    private static final MoneyTerms MODEL = new MoneyTerms(new MoneyStakes(true, true), null);
    private static final SideIndex THREE = new SideIndex(6, 3);
    private static final MoneyTerms EXACT = new MoneyTerms(
            MoneyStakes.USUAL,
            new ExactCube(EndgameTables.of(
                    OneSidedTable.build(THREE, 1, TableProgress.NONE),
                    TwoSidedTable.build(THREE, 1, TableProgress.NONE))));

    @Test
    void unitsByHand() {
        assertEquals(-6, MODEL.ended(-6));
        assertEquals(2, MODEL.inAll(0.5, MINE));
        assertEquals(1, MODEL.ofTaken(0.5));
        assertEquals(-0.5, MODEL.toOther(0.5));
        assertEquals(1, MODEL.point(MINE));
        assertEquals(MODEL, MODEL.swapped());
    }

    /** A turned cube of 2 stands for all that have room above them, and each for itself near the highest. */
    @Test
    void cubesOfTheSameOwnerAreAlikeBelowTheHighest() {
        assertEquals(new CubeState(2, CubeOwner.ME), MODEL.alike(MINE));
        assertEquals(new CubeState(2, CubeOwner.THEM), MODEL.alike(new CubeState(64, CubeOwner.THEM)));
        assertEquals(CubeState.START, MODEL.alike(new CubeState(64, CubeOwner.CENTRE)));
        CubeState high = new CubeState(128, CubeOwner.ME);
        assertEquals(high, MODEL.alike(high));
    }

    @Test
    void withoutTablesNothingIsKnown() {
        assertEquals(OptionalDouble.empty(), MODEL.known(Position.start(), CubeState.START));
        assertFalse(MODEL.known(Position.start().toPlanes(), 0, CUBES, new double[3]));
    }

    /** For all cubes at once, somewhere in an array, as for each by itself. */
    @Test
    void theQuickModelGivesTheModelsValues() {
        for (Position position : List.of(Position.start(), PositionText.parse("5@6 3@3 / 4@5 4@4"))) {
            int[] planes = new int[2 * Planes.STRIDE];
            System.arraycopy(position.toPlanes(), 0, planes, Planes.STRIDE, Planes.STRIDE);
            float[] chances = new float[9];
            System.arraycopy(CHANCES, 0, chances, 3, 6);
            double[] found = new double[3];
            MODEL.rolling(planes, Planes.STRIDE, chances, 3, CUBES, found);
            for (int i = 0; i < CUBES.length; i++) {
                CubeValues values = MODEL.values(position, Outcomes.of(CHANCES, 0), CUBES[i]);
                assertEquals(values.noDouble(), found[i], 1e-6, position + " " + CUBES[i]);
                assertEquals(values.best(), MODEL.best(position, Outcomes.of(CHANCES, 0), CUBES[i]));
            }
        }
    }

    /** One look into the table gives what the best of the three actions is worth, with each owner of the cube. */
    @Test
    void theTablesBestValueIsThatOfTheRightAction() {
        for (String text : List.of("1@6 1@2 / 1@5", "2@3 / 1@4 1@1", "1@6 1@5 / 2@6", "1@1 / 1@6")) {
            Position position = PositionText.parse(text);
            double[] found = new double[3];
            assertTrue(EXACT.known(position.toPlanes(), 0, CUBES, found));
            double[] expected = new double[3];
            for (int i = 0; i < CUBES.length; i++) {
                expected[i] = EXACT.exact(position, CUBES[i]).orElseThrow().best();
                assertEquals(expected[i], EXACT.known(position, CUBES[i]).orElseThrow(), 1e-7, text);
                // Whatever the chances, what is exact decides.
                assertEquals(expected[i], EXACT.best(position, Outcomes.of(CHANCES, 0), CUBES[i]), 1e-7, text);
            }
            assertArrayEquals(expected, found, 1e-7, text);
        }
        assertFalse(EXACT.known(Position.start().toPlanes(), 0, CUBES, new double[3]));
        assertEquals(OptionalDouble.empty(), EXACT.known(Position.start(), MINE));
    }

    /** Now or never, and nobody doubles after this roll: by hand. */
    @Test
    void aLastRollByHand() {
        // A checker on point 6 goes off with 27 of 36 throws.
        Position position = PositionText.parse("1@6 / 1@1");
        double equity = 2 * 27 / 36.0 - 1;
        assertEquals(equity, EXACT.exact(position, MINE).orElseThrow().noDouble(), 1e-7);
        assertEquals(equity, EXACT.exact(position, THEIRS).orElseThrow().noDouble(), 1e-7);
        assertEquals(2 * equity, EXACT.exact(position, MINE).orElseThrow().doubleTake(), 1e-7);
    }

    /** Per unit of the present cube: a take counts twice, a beaver four times; who may not double only rolls. */
    @Test
    void valuesOfActionsFollowFromThoseOfRolling() {
        CubeValues values = MODEL.values(MINE, cube -> cube.value() / 16.0);
        assertEquals(new CubeValues(true, true, 0.25, 1, 1, 4), values);
        CubeValues usual = EXACT.values(MINE, cube -> cube.value() / 16.0);
        assertEquals(new CubeValues(true, false, 0.25, 1, 1, 1), usual);
        assertEquals(new CubeValues(false, false, 0.25, 0.25, 1, 0.25), MODEL.values(THEIRS, cube -> 0.25));
    }

    /** The mover has won, or the other side is to roll, may double, and gets the opposite. */
    @Test
    void aPlayIsWorthTheGameItWinsOrTheOppositeOfWhatItLeaves() {
        AfterPlay after = new AfterPlay();
        Position open = PositionText.parse("5@6 3@3 / 4@5 4@4");
        int[] results = new int[2 * Planes.STRIDE];
        System.arraycopy(open.toPlanes(), 0, results, Planes.STRIDE, Planes.STRIDE);
        double left = MODEL.best(open.swapped(), Outcomes.of(CHANCES, 0).swapped(), MINE.swapped());
        assertEquals(-left, after.worth(MODEL, MINE, results, Planes.STRIDE, CHANCES, 0), 1e-6);
        PlayGenerator generator = new PlayGenerator();
        // The opponent has borne off none: a gammon, twice the cube.
        assertEquals(1, generator.generate(PositionText.parse("1@1 / 15@6").toPlanes(), 0, 2, 1));
        assertEquals(2, after.worth(MODEL, MINE, generator.results(), 0, CHANCES, 0));
    }
}
