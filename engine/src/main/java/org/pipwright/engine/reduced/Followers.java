package org.pipwright.engine.reduced;

import org.pipwright.engine.roll.Roll;

/** Where a policy's plays lead: the policy is kept as each play's place in its list, one byte a cell and roll. */
final class Followers {
    private final Sides sides;
    private final byte[] choices;
    private final int[] first;
    private final int[] results;
    private final int[] landings;

    Followers(ReducedGame game, byte[] choices) {
        sides = game.sides();
        this.choices = choices;
        first = game.lists().first();
        results = game.lists().results();
        landings = game.lists().landings();
    }

    /** The cell the opponent has before rolling. */
    int cell(Rows rows, int me, int opponent, int roll) {
        int choice = choices[(opponent * sides.size() + me) * Roll.COUNT + roll] & 0xFF;
        int play = first[me * Roll.COUNT + roll] + choice;
        return rows.row[rows.hits(landings[play])] + results[play];
    }
}
