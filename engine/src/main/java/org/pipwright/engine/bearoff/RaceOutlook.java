package org.pipwright.engine.bearoff;

import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Position;

/**
 * All that is known of a race: both sides' distributions and the chances that follow.
 *
 * @param basis what the chances rest on
 * @param outcomes six chances of the side on roll
 * @param onRoll outlook of the side on roll
 * @param opponent outlook of the opponent
 */
public record RaceOutlook(Basis basis, Outcomes outcomes, SideOutlook onRoll, SideOutlook opponent) {
    /**
     * The outlook of a single race; a {@link RaceJudge} is faster for several.
     *
     * @param position an unfinished position without contact
     * @param tables what is known
     * @return the outlook, the same each time
     * @throws IllegalArgumentException if there is contact or the game is over
     */
    public static RaceOutlook of(Position position, EndgameTables tables) {
        return new RaceJudge(tables).outlook(position);
    }
}
