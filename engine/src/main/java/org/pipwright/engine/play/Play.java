package org.pipwright.engine.play;

import java.io.Serializable;
import java.util.List;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.position.Position;

/**
 * One way to play a roll. Plays of a position and roll are told apart by where they lead; steps that lead to the same
 * position are one play, with one canonical text. Immutable. {@link Plays} and {@link PlayText} make them.
 */
@PublicApi
public final class Play implements Serializable {
    private static final long serialVersionUID = 1L;

    private final List<Step> steps;
    private final Position result;

    Play(List<Step> steps, Position result) {
        this.steps = List.copyOf(steps);
        this.result = result;
    }

    /**
     * The steps in an order in which they can be played.
     *
     * @return none if no checker can move, else 1 to 4
     */
    public List<Step> steps() {
        return steps;
    }

    /**
     * The position after the play, still seen by the side that played.
     *
     * @return the mover's checkers as the side on roll
     */
    public Position result() {
        return result;
    }

    /**
     * The position that the opponent has before rolling; if the play bears off the last checker, the lost position.
     *
     * @return {@link #result()} with sides exchanged
     */
    public Position next() {
        return result.swapped();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Play && result.equals(((Play) other).result) && steps.equals(((Play) other).steps);
    }

    @Override
    public int hashCode() {
        return result.hashCode();
    }

    /** The canonical text, as {@link PlayText#print} gives it. */
    @Override
    public String toString() {
        return PlayText.print(this);
    }
}
