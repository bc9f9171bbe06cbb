package org.pipwright.engine.reduced;

import java.util.function.Supplier;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/**
 * What an evaluator makes of every position of a reduced game, and the plays it therefore chooses: those with the highest
 * cubeless equity, the first of equals, as {@link org.pipwright.engine.match.EvaluatingPlayer} does. Positions are
 * evaluated one by one; an evaluator whose rounding depends on what it evaluates together may break near ties otherwise.
 */
final class NetJudgement {
    private final ReducedGame game;

    /** Equity of each cell for the side that is not on roll, which has just played. */
    private final float[] after;

    private final byte[] choices;

    private NetJudgement(ReducedGame game) {
        this.game = game;
        after = new float[game.cells()];
        choices = new byte[game.cells() * Roll.COUNT];
    }

    /** Evaluates everything; each thread asks for an evaluator of its own. */
    static NetJudgement of(ReducedGame game, Supplier<? extends PositionEvaluator> evaluators, int threads) {
        NetJudgement judgement = new NetJudgement(game);
        double[] finished = game.freshValues();
        for (int side = 1; side < game.sides().size(); side++) {
            int lost = game.cell(side, 0);
            judgement.after[lost] = (float) -finished[lost];
        }
        ThreadLocal<PositionEvaluator> own = ThreadLocal.withInitial(evaluators);
        try (Sweeper sweeper = new Sweeper(game.sides(), threads)) {
            sweeper.ascending((opponent, from, to) -> judgement.evaluate(own.get(), opponent, from, to));
            sweeper.ascending(judgement::choose);
        }
        return judgement;
    }

    /** Cubeless equity the evaluator gives an unfinished cell, for the side on roll. */
    double equity(int cell) {
        return -after[cell];
    }

    byte[] choices() {
        return choices;
    }

    private double evaluate(PositionEvaluator evaluator, int opponent, int from, int to) {
        int[] planes = new int[Planes.STRIDE];
        float[] chances = new float[Outcomes.COUNT];
        for (int me = from; me < to; me++) {
            if (game.playable(me, opponent)) {
                int cell = game.cell(me, opponent);
                game.copyPlanes(cell, planes, 0);
                evaluator.evaluate(planes, 0, chances, 0);
                // Swapped first and then added up, as the player does: other orders round otherwise.
                Chances.swap(chances, 0);
                after[cell] = Chances.equity(chances, 0);
            }
        }
        return 0;
    }

    private double choose(int opponent, int from, int to) {
        Rows rows = new Rows(game.sides(), opponent);
        for (int me = from; me < to; me++) {
            if (game.playable(me, opponent)) {
                choose(rows, me, opponent);
            }
        }
        return 0;
    }

    /** As {@link Bellman} does for exact values. */
    private void choose(Rows rows, int me, int opponent) {
        int[] first = game.lists().first();
        int[] results = game.lists().results();
        int[] landings = game.lists().landings();
        int choice = (opponent * game.sides().size() + me) * Roll.COUNT;
        for (int roll = 0; roll < Roll.COUNT; roll++) {
            int start = first[me * Roll.COUNT + roll];
            int end = first[me * Roll.COUNT + roll + 1];
            float highest = Float.NEGATIVE_INFINITY;
            for (int play = start; play < end; play++) {
                if (landings[play] < 0 && highest > Float.NEGATIVE_INFINITY) {
                    break;
                }
                if ((landings[play] & rows.blocked) == 0) {
                    float equity = after[rows.row[rows.hits(landings[play])] + results[play]];
                    if (equity > highest) {
                        highest = equity;
                        choices[choice + roll] = (byte) (play - start);
                    }
                }
            }
        }
    }
}
