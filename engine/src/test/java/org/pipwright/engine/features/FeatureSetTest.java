package org.pipwright.engine.features;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaiveRules;
import org.pipwright.engine.regime.RandomBoards;

/** Whole inputs against an encoder written from the description of the sets. */
@Tag("fast")
class FeatureSetTest {
    private static final int BOARDS = 1_000;
    private static final int PAD = 3;

    /** Codes of 26 places for both sides, then measures for both sides, then pairs. */
    private static List<Double> naive(FeatureSet set, NaiveBoard board) {
        List<Double> inputs = new ArrayList<>();
        addPlaces(board, inputs);
        addPlaces(board.swapped(), inputs);
        addMeasures(set, board, inputs);
        addMeasures(set, board.swapped(), inputs);
        if (set == FeatureSet.CONTACT_2) {
            addPairs(board, board.swapped(), inputs);
        }
        return inputs;
    }

    /** A place of mine and one of theirs that have yet to pass: blot and blot, blot and more, more and blot, more. */
    private static void addPairs(NaiveBoard board, NaiveBoard other, List<Double> inputs) {
        for (int mine = 1; mine <= NaiveBoard.BAR; mine++) {
            for (int theirs = 26 - mine; theirs <= NaiveBoard.BAR; theirs++) {
                int a = board.mine(mine);
                int b = other.mine(theirs);
                inputs.add(a == 1 && b == 1 ? 1.0 : 0.0);
                inputs.add(a == 1 && b > 1 ? 1.0 : 0.0);
                inputs.add(a > 1 && b == 1 ? 1.0 : 0.0);
                inputs.add(a > 1 && b > 1 ? 1.0 : 0.0);
            }
        }
    }

    private static void addPlaces(NaiveBoard board, List<Double> inputs) {
        int off = board.mine(NaiveBoard.OFF);
        inputs.add(off >= 1 ? 1.0 : 0.0);
        inputs.add(Math.min(off, 3) / 3.0);
        inputs.add(Math.min(off, 5) / 5.0);
        inputs.add(off <= 5 ? 0.0 : off >= 10 ? 1.0 : (off - 5) / 5.0);
        inputs.add(off <= 10 ? 0.0 : (off - 10) / 5.0);
        for (int place = 1; place <= NaiveBoard.BAR; place++) {
            int count = board.mine(place);
            inputs.add(count == 1 ? 1.0 : 0.0);
            inputs.add(count >= 2 ? 1.0 : 0.0);
            inputs.add(count >= 3 ? 1.0 : 0.0);
            inputs.add(count >= 4 ? 1.0 : 0.0);
            inputs.add(count > 4 ? (count - 4) / 3.0 : 0.0);
        }
    }

    private static void addMeasures(FeatureSet set, NaiveBoard board, List<Double> inputs) {
        inputs.add(NaiveRules.pips(board) / 167.0);
        if (set == FeatureSet.PLACES_1) {
            inputs.add(NaiveRules.contact(board) ? 1.0 : 0.0);
        } else if (set != FeatureSet.RACE_1) {
            inputs.add(NaiveMeasures.hittingRolls(board) / 36.0);
            inputs.add(NaiveMeasures.dancingRolls(board.swapped()) / 36.0);
            inputs.add(NaiveMeasures.freedom(board));
            inputs.add(NaiveMeasures.longestPrime(board) / 6.0);
        }
    }

    @ParameterizedTest
    @EnumSource
    void encodeAgrees(FeatureSet set) {
        RandomBoards.of(81, BOARDS).forEach(board -> {
            float[] out = new float[set.inputs() + 2 * PAD];
            Arrays.fill(out, Float.NaN);
            set.encode(board.toPlanes(), 0, out, PAD);
            double[] expected =
                    naive(set, board).stream().mapToDouble(Double::doubleValue).toArray();
            double[] found = new double[set.inputs()];
            for (int i = 0; i < found.length; i++) {
                found[i] = out[PAD + i];
            }
            assertArrayEquals(expected, found, 1e-6, board::toString);
            for (int i = 0; i < PAD; i++) {
                assertEquals(Float.NaN, out[i]);
                assertEquals(Float.NaN, out[out.length - 1 - i]);
            }
        });
    }

    @ParameterizedTest
    @EnumSource
    void extrasFollowThePlaces(FeatureSet set) {
        RandomBoards.of(82, 500).forEach(board -> {
            float[] all = new float[set.inputs()];
            float[] extras = new float[set.extras()];
            // Somewhere in a longer array, as the play generator's results lie.
            int[] planes = new int[24];
            System.arraycopy(board.toPlanes(), 0, planes, 8, 8);
            set.encode(planes, 8, all, 0);
            set.extras(planes, 8, extras, 0);
            int from = FeatureSet.PLACE_INPUTS;
            assertArrayEquals(Arrays.copyOfRange(all, from, from + set.extras()), extras);
        });
    }

    /** The list of what is not 0, in rising order, in the arrays of exactly the promised room and of more. */
    @ParameterizedTest
    @EnumSource
    void listAgreesWithEncode(FeatureSet set) {
        int[] indices = new int[set.inputs() + 1];
        float[] values = new float[set.inputs() + 1];
        int[] exactIndices = new int[set.inputs()];
        float[] exactValues = new float[set.inputs()];
        RandomBoards.of(84, BOARDS).forEach(board -> {
            int[] planes = new int[24];
            System.arraycopy(board.toPlanes(), 0, planes, 8, 8);
            float[] all = new float[set.inputs()];
            set.encode(planes, 8, all, 0);
            int size = set.list(planes, 8, indices, values);
            assertEquals(size, set.list(planes, 8, exactIndices, exactValues));
            float[] spread = new float[set.inputs()];
            for (int i = 0; i < size; i++) {
                assertTrue(i == 0 || indices[i] > indices[i - 1], "rising order");
                assertTrue(values[i] != 0, "not 0");
                assertEquals(indices[i], exactIndices[i]);
                assertEquals(values[i], exactValues[i]);
                spread[indices[i]] = values[i];
            }
            assertArrayEquals(all, spread, board::toString);
        });
    }

    @ParameterizedTest
    @EnumSource
    void swappingSidesSwapsTheHalves(FeatureSet set) {
        RandomBoards.of(83, 500).forEach(board -> {
            float[] mine = new float[set.inputs()];
            float[] theirs = new float[set.inputs()];
            set.encode(board.toPlanes(), 0, mine, 0);
            set.encode(board.swapped().toPlanes(), 0, theirs, 0);
            swapHalves(theirs, 0, FeatureSet.PLACE_INPUTS);
            swapHalves(theirs, FeatureSet.PLACE_INPUTS, set.inputs() - set.pairs());
            if (set.pairs() > 0) {
                swapPairs(theirs, set.inputs() - set.pairs());
            }
            assertArrayEquals(mine, theirs);
        });
    }

    /** Pairs are numbered by the mover's place; from the other side a pair's places and kinds change roles. */
    private static void swapPairs(float[] values, int from) {
        float[] swapped = new float[values.length];
        int next = from;
        for (int p = 1; p <= NaiveBoard.BAR; p++) {
            for (int q = 26 - p; q <= NaiveBoard.BAR; q++) {
                int mirrored = from + 4 * (q * (q - 1) / 2 + p - (26 - q));
                for (int kind : new int[] {0, 2, 1, 3}) {
                    swapped[next++] = values[mirrored + kind];
                }
            }
        }
        System.arraycopy(swapped, from, values, from, values.length - from);
    }

    private static void swapHalves(float[] values, int from, int to) {
        int half = (to - from) / 2;
        for (int i = from; i < from + half; i++) {
            float kept = values[i];
            values[i] = values[i + half];
            values[i + half] = kept;
        }
    }

    @Test
    void sizes() {
        assertEquals(270, FeatureSet.CONTACT_1.inputs());
        assertEquals(270 + 4 * (25 * 26 / 2), FeatureSet.CONTACT_2.inputs());
        assertEquals(262, FeatureSet.RACE_1.inputs());
        assertEquals(264, FeatureSet.PLACES_1.inputs());
    }

    @ParameterizedTest
    @EnumSource
    void namesLeadBack(FeatureSet set) {
        assertEquals(set, FeatureSet.named(set.label()));
    }

    @Test
    void unknownNameIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> FeatureSet.named("contact-0"));
    }
}
