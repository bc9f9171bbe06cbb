package org.pipwright.engine.cube;

import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.roll.Roll;

/**
 * What the next two rolls, one of either side, do to a game.
 *
 * @param losers share of the 36 times 36 throws after which a double would be passed, 0 to 1
 * @param volatility standard deviation over them of the cubeless equity, points per game
 * @param rolls what each of the 21 rolls of the side on roll does, the one that loses the market most often first
 */
@PublicApi
public record Market(double losers, double volatility, List<Loser> rolls) {
    /**
     * One roll of the side on roll.
     *
     * @param roll the roll
     * @param replies with how many of the opponent's 36 throws after it the market is lost; all of them if the roll wins the
     *     game
     */
    public record Loser(Roll roll, int replies) {}

    /**
     * Keeps the rolls.
     *
     * @param losers in [0, 1]
     * @param volatility at least 0
     * @param rolls all 21
     */
    public Market {
        rolls = List.copyOf(rolls);
    }

    /**
     * The rolls after which a number of replies within these limits lose the market.
     *
     * @param least least number of the opponent's 36 throws
     * @param most largest number
     * @return rolls, those that lose it most often first
     */
    public List<Loser> losing(int least, int most) {
        return rolls.stream()
                .filter(each -> each.replies() >= least && each.replies() <= most)
                .collect(Collectors.toUnmodifiableList());
    }
}
