package org.pipwright.engine.cube;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
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
 * Finds what the next two rolls do to a game ({@link Market}), and above all how often the chance to double a taking opponent goes by: the share of the next two rolls, one of either side, after
 * which a double would be passed (common practice calls such a sequence a market loser, no source). Both sides make the
 * play with the highest cubeless equity, as the quick evaluator sees it where there is one, since there are 462 plays to
 * choose. A game the side on roll wins within the two rolls counts; one it loses does not.
 */
public final class MarketLosers {
    private static final int THROWS = 36;
    private final PositionEvaluator evaluator;
    private final PositionEvaluator player;
    private final PlayGenerator generator = new PlayGenerator();
    private float[] chances = new float[256 * Outcomes.COUNT];
    private double mean;
    private double square;

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
     * @return what the next two rolls do
     */
    public Market of(Position position, BiPredicate<Position, Outcomes> passes) {
        int[] mine = position.toPlanes();
        int[] theirs = new int[Planes.STRIDE];
        List<Market.Loser> rolls = new ArrayList<>();
        mean = 0;
        square = 0;
        for (Roll roll : Roll.all()) {
            boolean won = play(mine, roll, theirs);
            if (won) {
                // The chances are those of the side that has lost.
                add(roll.ways() * THROWS, -Chances.equity(chances, 0));
            }
            rolls.add(new Market.Loser(roll, won ? THROWS : replies(theirs, roll, passes)));
        }
        double losers = rolls.stream()
                .mapToDouble(each -> each.roll().ways() * each.replies() / (double) (THROWS * THROWS))
                .sum();
        // A stable sort: rolls that lose it equally often stay in their order.
        rolls.sort(Comparator.comparingInt(each -> -each.replies()));
        return new Market(losers, Math.sqrt(Math.max(0, square - mean * mean)), rolls);
    }

    /** Throws of the opponent that lose the market after a roll of the side on roll. */
    private int replies(int[] theirs, Roll roll, BiPredicate<Position, Outcomes> passes) {
        int[] after = new int[Planes.STRIDE];
        int replies = 0;
        for (Roll reply : Roll.all()) {
            boolean over = play(theirs, reply, after);
            if (!over) {
                evaluator.evaluate(after, 0, chances, 0);
            }
            add(roll.ways() * reply.ways(), Chances.equity(chances, 0));
            boolean lost = !over && passes.test(Position.ofPlanes(after, 0), Outcomes.of(chances, 0));
            replies += lost ? reply.ways() : 0;
        }
        return replies;
    }

    private void add(int throwsOfBoth, double equity) {
        double weight = throwsOfBoth / (double) (THROWS * THROWS);
        mean += weight * equity;
        square += weight * equity * equity;
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
