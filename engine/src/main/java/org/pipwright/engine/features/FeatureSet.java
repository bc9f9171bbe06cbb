package org.pipwright.engine.features;

import java.util.Arrays;
import org.pipwright.engine.position.Planes;

/**
 * The numbered feature sets: how a position becomes the input of a network. A set never changes once a model has been
 * shipped with it; a better one gets a new name.
 *
 * <p>Inputs come in three parts. First the places: for the side on roll, then for the opponent, places 0 to 25 in order,
 * {@value PlaceCode#LENGTH} inputs each ({@link PlaceCode}). Then the extras: for the side on roll, then for the opponent,
 * the measures of the set ({@link Measures}). Then, in some sets, the pairs ({@link FacingPairs}). Places and pairs can be
 * updated by differences.
 */
public enum FeatureSet {
    /** For positions with contact: places, pips, hitting rolls, closed points in the way, freedom of the last checker, prime. */
    CONTACT_1("contact-1", 5, 0) {
        @Override
        void ofSide(int[] planes, int side, int other, float[] out, int outAt) {
            ofContact(planes, side, other, out, outAt);
        }
    },
    /** For positions with contact: contact-1, and then the pairs of places that face each other. */
    CONTACT_2("contact-2", 5, FacingPairs.COUNT) {
        @Override
        void ofSide(int[] planes, int side, int other, float[] out, int outAt) {
            ofContact(planes, side, other, out, outAt);
        }
    },
    /** For races: places and pips. */
    RACE_1("race-1", 1, 0) {
        @Override
        void ofSide(int[] planes, int side, int other, float[] out, int outAt) {
            // There are none.
        }
    },
    /** For all positions: places, pips, and an input of 1 while there is contact. */
    PLACES_1("places-1", 2, 0) {
        @Override
        void ofSide(int[] planes, int side, int other, float[] out, int outAt) {
            out[outAt] = Planes.rearmost(planes, side) + Planes.rearmost(planes, other) > Planes.BAR ? 1 : 0;
        }
    };

    /** Pip count that becomes an input of 1: that of the starting position. */
    private static final float PIP_SCALE = 167f;

    /** Inputs of the first part: two sides, 26 places. */
    public static final int PLACE_INPUTS = 2 * Planes.PLACES * PlaceCode.LENGTH;

    private final String label;
    private final int measures;
    private final int pairs;

    FeatureSet(String label, int measures, int pairs) {
        this.label = label;
        this.measures = measures;
        this.pairs = pairs;
    }

    /** Writes the measures of one side that follow its pips. */
    abstract void ofSide(int[] planes, int side, int other, float[] out, int outAt);

    private static void ofContact(int[] planes, int side, int other, float[] out, int outAt) {
        out[outAt] = Measures.hittingRolls(planes, side, other) / 36f;
        out[outAt + 1] = Measures.dancingRolls(planes, other) / 36f;
        out[outAt + 2] = Measures.freedom(planes, side, other);
        out[outAt + 3] = Measures.longestPrime(planes, side) / 6f;
    }

    /**
     * The set of a name.
     *
     * @param label name as in a model file
     * @return the set
     * @throws IllegalArgumentException if there is none
     */
    public static FeatureSet named(String label) {
        for (FeatureSet set : values()) {
            if (set.label.equals(label)) {
                return set;
            }
        }
        throw new IllegalArgumentException("no feature set '" + label + "'");
    }

    /**
     * Name in model files.
     *
     * @return for instance {@code contact-1}
     */
    public String label() {
        return label;
    }

    /**
     * Length of the second part.
     *
     * @return number of extras, both sides together
     */
    public int extras() {
        return 2 * measures;
    }

    /**
     * Length of the third part.
     *
     * @return number of pairs, 0 if the set has none
     */
    public int pairs() {
        return pairs;
    }

    /**
     * Length of the whole input.
     *
     * @return number of inputs
     */
    public int inputs() {
        return PLACE_INPUTS + extras() + pairs;
    }

    /**
     * Computes the extras of a position.
     *
     * @param planes array that holds the position
     * @param at index of its first plane
     * @param out where to write
     * @param outAt index of the first of {@link #extras()} values
     */
    public void extras(int[] planes, int at, float[] out, int outAt) {
        int other = at + Planes.SIDE;
        out[outAt] = Planes.pips(planes, at) / PIP_SCALE;
        ofSide(planes, at, other, out, outAt + 1);
        out[outAt + measures] = Planes.pips(planes, other) / PIP_SCALE;
        ofSide(planes, other, at, out, outAt + measures + 1);
    }

    /**
     * How many of a side's extras are not its pips, which come first of each side.
     *
     * @return at least 0
     */
    public int others() {
        return measures - 1;
    }

    /**
     * Computes those extras of a position that are no sum over its checkers: all but the pips.
     *
     * @param planes array that holds the position
     * @param at index of its first plane
     * @param out where to write
     * @param outAt index of the first of twice {@link #others()} values, those of the side on roll first
     */
    public void others(int[] planes, int at, float[] out, int outAt) {
        int other = at + Planes.SIDE;
        ofSide(planes, at, other, out, outAt);
        ofSide(planes, other, at, out, outAt + others());
    }

    /**
     * What a checker adds to the extra that is its side's pips.
     *
     * @param place where it stands, 0 to 25
     * @return its share
     */
    public static float pips(int place) {
        return place / PIP_SCALE;
    }

    /**
     * Lists the inputs of a position that are not 0, in rising order.
     *
     * @param planes array that holds the position
     * @param at index of its first plane
     * @param indices receives which inputs; room for {@link #inputs()}
     * @param values receives their values; likewise
     * @return how many there are
     */
    public int list(int[] planes, int at, int[] indices, float[] values) {
        int size = 0;
        for (int side = 0; side < 2; side++) {
            int sideAt = at + side * Planes.SIDE;
            for (int left = Planes.occupied(planes, sideAt); left != 0; left &= left - 1) {
                int place = Integer.numberOfTrailingZeros(left);
                float[] code = PlaceCode.values(place, Planes.count(planes, sideAt, place));
                int first = (side * Planes.PLACES + place) * PlaceCode.LENGTH;
                for (int k = 0; k < PlaceCode.LENGTH; k++) {
                    indices[size] = first + k;
                    values[size] = code[k];
                    size += code[k] != 0 ? 1 : 0;
                }
            }
        }
        // The extras go through the end of the array, where the compacted list cannot have reached yet.
        int extrasAt = values.length - extras();
        extras(planes, at, values, extrasAt);
        for (int i = 0; i < extras(); i++) {
            float value = values[extrasAt + i];
            indices[size] = PLACE_INPUTS + i;
            values[size] = value;
            size += value != 0 ? 1 : 0;
        }
        return pairs == 0 ? size : listPairs(planes, at, indices, values, size);
    }

    private int listPairs(int[] planes, int at, int[] indices, float[] values, int from) {
        int to = from + FacingPairs.list(planes, at, indices, from);
        for (int i = from; i < to; i++) {
            indices[i] += PLACE_INPUTS + extras();
            values[i] = 1;
        }
        return to;
    }

    /**
     * Computes the whole input of a position.
     *
     * @param planes array that holds the position
     * @param at index of its first plane
     * @param out where to write
     * @param outAt index of the first of {@link #inputs()} values
     */
    public void encode(int[] planes, int at, float[] out, int outAt) {
        int next = outAt;
        for (int side = at; side <= at + Planes.SIDE; side += Planes.SIDE) {
            for (int place = 0; place < Planes.PLACES; place++) {
                int count = Planes.count(planes, side, place);
                for (int k = 0; k < PlaceCode.LENGTH; k++) {
                    out[next++] = PlaceCode.value(place, count, k);
                }
            }
        }
        extras(planes, at, out, next);
        if (pairs != 0) {
            encodePairs(planes, at, out, next + extras());
        }
    }

    private void encodePairs(int[] planes, int at, float[] out, int outAt) {
        Arrays.fill(out, outAt, outAt + pairs, 0);
        int[] list = new int[FacingPairs.MAX];
        int size = FacingPairs.list(planes, at, list, 0);
        for (int i = 0; i < size; i++) {
            out[outAt + list[i]] = 1;
        }
    }
}
