package org.pipwright.training.selfplay;

import java.util.Arrays;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;

/** Plays games of an evaluator against itself and turns them into samples. Serves one thread. */
public final class SelfPlay {
    private final GameLoop loop = new GameLoop();
    private final EvaluatingPlayer player;
    private int[] positions = new int[256 * Planes.STRIDE];
    private float[] values = new float[256 * Outcomes.COUNT];
    private final Starts starts;
    private final boolean doublesMayOpen;
    private int turns;

    /**
     * Self-play of one evaluator.
     *
     * @param evaluator what both sides think with
     * @param start position that games begin from
     * @param variedShare share of games, 0 to 1, that begin after a few random turns instead
     * @param doublesMayOpen whether the first roll may be a double
     */
    public SelfPlay(PositionEvaluator evaluator, Position start, double variedShare, boolean doublesMayOpen) {
        this.player = new EvaluatingPlayer(evaluator);
        this.starts = new Starts(start, variedShare);
        this.doublesMayOpen = doublesMayOpen;
    }

    /**
     * Plays a game.
     *
     * @param dice where rolls come from
     * @param lambda how far targets look ahead, 0 to 1
     * @param out receives one sample a turn
     * @return points of the winner: 1, 2 or 3
     */
    public int play(Dice dice, float lambda, Samples out) {
        turns = 0;
        Position start = starts.choose(dice);
        Roll first = doublesMayOpen ? dice.next() : dice.opening();
        int points = loop.play(start, first, player, player, dice, dice, (planes, roll, legal, chosen) -> keep(planes));
        TdTargets.apply(values, turns, lambda);
        for (int t = 0; t < turns; t++) {
            out.add(positions, t * Planes.STRIDE, values, t * Outcomes.COUNT);
        }
        return Math.abs(points);
    }

    private void keep(int[] planes) {
        if ((turns + 1) * Planes.STRIDE > positions.length) {
            positions = Arrays.copyOf(positions, 2 * positions.length);
            values = Arrays.copyOf(values, 2 * values.length);
        }
        System.arraycopy(planes, 0, positions, turns * Planes.STRIDE, Planes.STRIDE);
        System.arraycopy(player.chancesOfChoice(), 0, values, turns * Outcomes.COUNT, Outcomes.COUNT);
        turns++;
    }

    /**
     * Length of the game played last.
     *
     * @return rolls of both sides
     */
    public int turns() {
        return turns;
    }
}
