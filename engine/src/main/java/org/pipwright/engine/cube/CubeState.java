package org.pipwright.engine.cube;

import java.io.Serializable;
import org.pipwright.engine.PublicApi;

/**
 * What the cube shows and who owns it, seen from the side on roll.
 *
 * @param value what it shows: a power of two, 1 to {@value #HIGHEST}; 1 only in the centre
 * @param owner who may turn it
 */
@PublicApi
public record CubeState(int value, CubeOwner owner) implements Serializable {
    /**
     * Highest cube. The rules know no limit (a wooden cube shows 64 at most); this one keeps points far from overflow.
     */
    public static final int HIGHEST = 1 << 20;

    /** The cube at the start of a game. */
    public static final CubeState START = new CubeState(1, CubeOwner.CENTRE);

    /**
     * Checks the state.
     *
     * @param value what the cube shows
     * @param owner who owns it
     * @throws IllegalArgumentException if the value is no power of two in range, or a cube at 1 has an owner
     */
    public CubeState {
        requireShown(value);
        if (value == 1 && owner != CubeOwner.CENTRE) {
            throw new IllegalArgumentException("a cube at 1 has not been turned: its owner is centre");
        }
    }

    /**
     * Checks what a cube shows, whoever owns it.
     *
     * @param value a number
     * @throws IllegalArgumentException if no cube shows it
     */
    public static void requireShown(int value) {
        if (value < 1 || value > HIGHEST || Integer.bitCount(value) != 1) {
            throw new IllegalArgumentException(
                    "the cube shows a power of two (1, 2, 4, ...) up to " + HIGHEST + ", not " + value);
        }
    }

    /**
     * Whether the side on roll has access to it, by its owner and value alone.
     *
     * @return true if it is centred or owned by the side on roll, and not at its highest
     */
    public boolean turnable() {
        return owner != CubeOwner.THEM && value < HIGHEST;
    }

    /**
     * The cube after the side on roll has doubled and the opponent has taken.
     *
     * @return twice the value, owned by the opponent
     */
    public CubeState taken() {
        return new CubeState(2 * value, CubeOwner.THEM);
    }

    /**
     * The cube after the opponent has beavered a double of the side on roll.
     *
     * @return four times the value, owned by the opponent
     */
    public CubeState beavered() {
        return new CubeState(4 * value, CubeOwner.THEM);
    }

    /**
     * The same cube seen from the other side.
     *
     * @return same value, owner exchanged
     */
    public CubeState swapped() {
        return new CubeState(value, owner.swapped());
    }
}
