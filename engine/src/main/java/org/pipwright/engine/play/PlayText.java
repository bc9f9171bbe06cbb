package org.pipwright.engine.play;

import org.pipwright.engine.PublicApi;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * The text form of a play, in the trade's notation: {@code 8/5 6/5}, {@code 13/7*}, {@code bar/22*}, {@code 6/off(2)}.
 *
 * <p>Output has one form: highest point first, one checker's steps joined unless it hits on the way
 * (<code>13/10&#42;/8</code>), repeated ones counted with one star for them all, {@code no play} if no checker can move. Input
 * takes any order, capitals, commas, {@code b} and {@code 25} for the bar, {@code 0} for off, steps joined or not, and
 * stars left out.
 */
@PublicApi
public final class PlayText {
    private PlayText() {}

    /**
     * The canonical text of a play.
     *
     * @param play a play
     * @return text that {@link #parse} reads back as an equal play of the same position and roll
     */
    public static String print(Play play) {
        return PlayPrinter.print(play.steps());
    }

    /**
     * Reads a play. A joined {@code 13/8} hits nothing on the way if it can; if it must, and could hit on either point,
     * the text has to say which.
     *
     * @param text the text form
     * @param position the position before the play
     * @param roll the roll
     * @return the legal play that the text describes
     * @throws IllegalPlayException if the text cannot be read or the play is not legal; one line says why
     */
    public static Play parse(String text, Position position, Roll roll) {
        return PlayResolver.resolve(PlayReader.read(text), position, roll);
    }
}
