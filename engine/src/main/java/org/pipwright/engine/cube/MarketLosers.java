package org.pipwright.engine.cube;

import java.util.function.BiPredicate;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.FinishedGames;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * How often the chance to double a taking opponent goes by: the share of the next two rolls, one of either side, after
 * which a double would be passed (common practice calls such a sequence a market loser, no source). Both sides make the
 * play with the highest cubeless equity, as the quick evaluator sees it where there is one, since there are 462 plays to
 * choose. A game the side on roll wins within the two rolls counts; one it loses does not.
 */
public final class MarketLosers {
    private final PositionEvaluator evaluator;
    private final PositionEvaluator player;
    private final PlayGenerator generator = new PlayGenerator();
    private float[] chances = new float[256 * Outcomes.COUNT];

    /**
     * A counter for one thread.
     *
     * @param evaluator gives the chances after the plays; its quick one chooses these
     */
    public MarketLosers(PositionEvaluator evaluator) {
        this.evaluator = evaluator;
        player = evaluator.quick();
    }

    /**
     * Counts them.
     *
     * @param position an unfinished position before the roll
     * @param passes whether the opponent would pass a double of the side on roll, given a position and its six chances
     * @return share of the 36 times 36 throws, in [0, 1]
     */
    public double share(Position position, BiPredicate<Position, Outcomes> passes) {
        int[] mine = position.toPlanes();
        int[] theirs = new int[Planes.STRIDE];
        int[] after = new int[Planes.STRIDE];
        double share = 0;
        for (Roll roll : Roll.all()) {
            if (play(mine, roll, theirs)) {
                share += roll.probability();
                continue;
            }
            for (Roll reply : Roll.all()) {
                if (!play(theirs, reply, after) && lost(after, passes)) {
                    share += roll.probability() * reply.probability();
                }
            }
        }
        return share;
    }

    private boolean lost(int[] planes, BiPredicate<Position, Outcomes> passes) {
        float[] out = new float[Outcomes.COUNT];
        evaluator.evaluate(planes, 0, out, 0);
        return passes.test(Position.ofPlanes(planes, 0), Outcomes.of(out, 0));
    }

    /** Makes the best play and gives the position to the other side; returns whether the game has ended with it. */
    private boolean play(int[] planes, Roll roll, int[] next) {
        generator.generate(planes, 0, roll.high(), roll.low());
        int count = generator.size();
        if (chances.length < count * Outcomes.COUNT) {
            chances = new float[2 * count * Outcomes.COUNT];
        }
        player.evaluateResults(planes, 0, generator.results(), count, chances);
        int best = 0;
        for (int i = 1; i < count; i++) {
            if (Chances.equity(chances, i * Outcomes.COUNT) > Chances.equity(chances, best * Outcomes.COUNT)) {
                best = i;
            }
        }
        Planes.copySwapped(generator.results(), best * Planes.STRIDE, next, 0);
        return FinishedGames.write(next, 0, chances, 0);
    }
}
