package org.pipwright.engine.search;

import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.roll.Dice;

/** Plays what a search with a fixed lookahead finds best, the first of equals. Serves one thread. */
public final class LookaheadPlayer implements Player {
    private final Lookahead search;
    private final int lookahead;
    private final float[] chances = new float[Outcomes.COUNT];

    /**
     * A player.
     *
     * @param search what it thinks with
     * @param lookahead number of future rolls to average over, 0 to {@value LookaheadSettings#MAX}
     */
    public LookaheadPlayer(Lookahead search, int lookahead) {
        LookaheadSettings.requireLookahead(lookahead);
        this.search = search;
        this.lookahead = lookahead;
    }

    @Override
    public int choose(int[] planes, int at, PlayGenerator legal, Dice ties) {
        return search.choose(planes, at, legal.results(), legal.size(), lookahead, chances);
    }

    /**
     * The six chances of the play chosen last, with lookahead, for the side that played it.
     *
     * @return a fresh array of six
     */
    public float[] chancesOfChoice() {
        return chances.clone();
    }
}
