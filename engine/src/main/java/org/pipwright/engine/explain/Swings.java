package org.pipwright.engine.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.RollReply;

/**
 * What each of the opponent's rolls changes, for the side that has played.
 *
 * @param mean equity averaged over the 36 throws, points per game
 * @param rolls all 21 rolls, the opponent's best first; none if the game is over
 * @param costOfHits what the opponent's hits cost, points per game: how much better its best replies are than the best that
 *     do not hit, averaged over the 36 throws
 */
public record Swings(double mean, List<Swing> rolls, double costOfHits) {
    private static final double THROWS = 36;

    /**
     * Keeps the rolls.
     *
     * @param mean points per game
     * @param rolls the opponent's best first
     * @param costOfHits points per game, at least 0
     */
    public Swings {
        rolls = List.copyOf(rolls);
    }

    /**
     * The swings of replies.
     *
     * @param replies the best reply to each roll, with chances for the side that replies; empty if the game is over
     * @param costOfHits what hits cost
     * @return the swings, for the other side
     */
    public static Swings of(List<RollReply> replies, double costOfHits) {
        double mean = replies.stream()
                        .mapToDouble(
                                reply -> -reply.roll().ways() * reply.outcomes().equity())
                        .sum()
                / THROWS;
        List<Swing> rolls = new ArrayList<>();
        for (RollReply reply : replies) {
            double equity = -reply.outcomes().equity();
            rolls.add(new Swing(reply.roll(), reply.play(), equity, equity - mean));
        }
        rolls.sort(Comparator.comparingDouble(Swing::change));
        return new Swings(mean, rolls, costOfHits);
    }

    /**
     * Against which of the opponent's rolls another play does better than this one.
     *
     * @param other swings after the other play
     * @param most how many at most
     * @return swings of this play whose changes are its equity less the other play's against the same roll, so below 0; the
     *     lowest first
     */
    public List<Swing> worseThan(Swings other, int most) {
        Map<Roll, Double> others = other.rolls.stream().collect(Collectors.toMap(Swing::roll, Swing::equity));
        return rolls.stream()
                .filter(swing -> others.containsKey(swing.roll()))
                .map(swing -> new Swing(
                        swing.roll(), swing.reply(), swing.equity(), swing.equity() - others.get(swing.roll())))
                .filter(swing -> swing.change() < 0)
                .sorted(Comparator.comparingDouble(Swing::change))
                .limit(most)
                .collect(Collectors.toUnmodifiableList());
    }

    /**
     * The opponent's best rolls.
     *
     * @param most how many at most
     * @return those that are better than the mean for it, best first
     */
    public List<Swing> feared(int most) {
        List<Swing> feared = new ArrayList<>(rolls);
        feared.removeIf(swing -> swing.change() >= 0);
        return List.copyOf(feared.subList(0, Math.min(most, feared.size())));
    }

    /**
     * The opponent's worst rolls.
     *
     * @param most how many at most
     * @return those that are worse than the mean for it, worst first
     */
    public List<Swing> hoped(int most) {
        List<Swing> hoped = new ArrayList<>(rolls);
        hoped.removeIf(swing -> swing.change() <= 0);
        hoped.sort(Comparator.comparingDouble(swing -> -swing.change()));
        return List.copyOf(hoped.subList(0, Math.min(most, hoped.size())));
    }

    /**
     * Whether the opponent's replies are known.
     *
     * @return false if the game is over or nobody asked for them
     */
    public boolean known() {
        return !rolls.isEmpty();
    }
}
