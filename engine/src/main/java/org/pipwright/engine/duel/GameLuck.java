package org.pipwright.engine.duel;

import org.pipwright.engine.match.TurnListener;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.RollLuck;

/** Sums the luck of a game's rolls while it is played. Each side's rolls are valued by a valuer of its own. */
final class GameLuck implements TurnListener {
    private final RollLuck aLuck;
    private final RollLuck bLuck;
    private boolean aOnRoll;
    private boolean opening;
    private double total;

    GameLuck(RollLuck aLuck, RollLuck bLuck) {
        this.aLuck = aLuck;
        this.bLuck = bLuck;
    }

    void begin(boolean aStarts, boolean openingRoll) {
        aOnRoll = aStarts;
        opening = openingRoll;
        total = 0;
    }

    @Override
    public void turn(int[] planes, Roll roll, PlayGenerator legal, int chosen) {
        double luck = (aOnRoll ? aLuck : bLuck).points(planes, 0, roll, opening);
        total += aOnRoll ? luck : -luck;
        aOnRoll = !aOnRoll;
        opening = false;
    }

    /** Luck of A less luck of B so far, in points. */
    double total() {
        return total;
    }
}
