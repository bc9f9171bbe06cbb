package org.pipwright.engine.explain;

import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/**
 * What both sides have before them after a play. What the side that has played could do with its next roll is counted as if
 * the opponent left the board as it is.
 *
 * @param escape the checkers of the side that has played behind the opponent's row
 * @param theirEscape the opponent's, with the roll that comes next
 * @param entry how the opponent comes in from the bar
 * @param nextShots throws of its own next roll that leave a shot however they are played; counted in {@link Stage#CLOSING}
 *     alone, else 0
 * @param theirNextShots the same of the opponent's next roll, if it is the one that brings its checkers home or off past what
 *     stays behind
 * @param spread how its checkers are spread
 * @param theirSpread the opponent's
 * @param numbers what each number does for it
 * @param theirNumbers the same for the opponent
 */
public record Plans(
        Escape escape,
        Escape theirEscape,
        Entry entry,
        int nextShots,
        int theirNextShots,
        Spread spread,
        Spread theirSpread,
        Numbers numbers,
        Numbers theirNumbers) {
    /**
     * What both sides have before them.
     *
     * @param result the position after a play, whose first side has played
     * @param next the same with the opponent on roll
     * @param stage the stage of the game
     * @return the facts; of a finished game, that nothing is left to do
     */
    static Plans of(Position result, Position next, Stage stage) {
        int[] planes = result.toPlanes();
        int[] swapped = next.toPlanes();
        boolean over = next.finished();
        return new Plans(
                over ? Escape.FREE : Escape.of(result),
                over ? Escape.FREE : Escape.of(next),
                over ? new Entry(0, 36) : Entry.of(next),
                over || stage != Stage.CLOSING ? 0 : NextShots.of(result),
                over || Stage.of(next) != Stage.CLOSING ? 0 : NextShots.of(next),
                Spread.of(planes, 0),
                Spread.of(planes, Planes.SIDE),
                Numbers.of(planes, 0),
                Numbers.of(swapped, 0));
    }
}
