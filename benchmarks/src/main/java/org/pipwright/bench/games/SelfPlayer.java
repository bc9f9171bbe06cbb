package org.pipwright.bench.games;

import java.util.function.Supplier;
import org.pipwright.engine.evaluation.Horizon;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.match.TurnListener;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.Lookahead;
import org.pipwright.engine.search.LookaheadSettings;

/** Plays both sides of games, from the start to the very end, with some lookahead. Serves one thread. */
public final class SelfPlayer {
    private final GameLoop loop = new GameLoop();
    private final Lookahead search;
    private final Player player;
    private final int lookahead;

    public SelfPlayer(Judgement judgement, int lookahead) {
        this.search = new Lookahead(judgement, LookaheadSettings.DEFAULT);
        this.lookahead = lookahead;
        this.player = Players.of(judgement, lookahead);
    }

    /** Plays a game that begins as the rules say, with a throw that is no double; out gets six chances, one of them 1, of
     * the side that begins. */
    public void play(Dice dice, TurnListener listener, float[] out) {
        boolean[] begun = {false};
        Supplier<Roll> rolls = () -> {
            Roll roll = begun[0] ? dice.next() : dice.opening();
            begun[0] = true;
            return roll;
        };
        loop.play(Position.start(), rolls, player, player, dice, listener, Horizon.NONE, out);
    }

    /** The six chances of an unfinished position before the roll, with the lookahead it plays with; a listener may ask. */
    public void evaluate(int[] planes, float[] out, int outAt) {
        search.evaluate(planes, 0, lookahead, out, outAt);
    }

    /** Rolls of the game played last. */
    public int turns() {
        return loop.turns();
    }
}
