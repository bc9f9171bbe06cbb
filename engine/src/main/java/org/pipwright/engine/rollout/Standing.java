package org.pipwright.engine.rollout;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.pipwright.engine.statistics.RepeatedLooks;

/**
 * Who is ahead.
 *
 * @param order the candidates, best first
 * @param needed how many standard errors every other candidate must be behind at this look for the best to be clear; 0 if
 *     that was not asked
 * @param clear whether they all are
 */
record Standing(List<Integer> order, double needed, boolean clear) {
    /** The standing after some trials; {@code sure} as in the settings. */
    static Standing of(Moments moments, double sure) {
        int rivals = moments.candidates() - 1;
        List<Integer> order = IntStream.rangeClosed(0, rivals)
                .boxed()
                .sorted(Comparator.comparingDouble(c -> -moments.mean(c, Moments.VALUE)))
                .collect(Collectors.toList());
        if (sure == 0 || rivals == 0) {
            return new Standing(order, 0, false);
        }
        double needed = new RepeatedLooks(sure, rivals).needed(moments.trials());
        int best = order.get(0);
        boolean clear = order.stream()
                .skip(1)
                .map(c -> moments.difference(best, c))
                .allMatch(ahead -> ahead.mean() > needed * ahead.standardError());
        return new Standing(order, needed, clear);
    }

    int best() {
        return order.get(0);
    }
}
