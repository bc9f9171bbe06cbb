package org.pipwright.bench.games;

import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.Lookahead;
import org.pipwright.engine.search.LookaheadPlayer;
import org.pipwright.engine.search.LookaheadSettings;

/** Players with some lookahead; one serves one thread. */
public final class Players {
    private Players() {}

    public static Player of(Judgement judgement, int lookahead) {
        return lookahead == 0
                ? new EvaluatingPlayer(judgement.evaluator())
                : new LookaheadPlayer(new Lookahead(judgement, LookaheadSettings.DEFAULT), lookahead);
    }
}
