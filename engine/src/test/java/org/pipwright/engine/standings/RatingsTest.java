package org.pipwright.engine.standings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.statistics.RunningMean;

/** The fit of ratings on results made up from known ones. */
class RatingsTest {
    private static final double[] PLANTED = {0.3, 0, -0.7, 1.2, 0.05};

    /** A duel of so many pairs with exactly this mean and deviation. */
    private static RunningMean moments(double mean, double deviation, long pairs) {
        return new RunningMean(pairs, mean, deviation * deviation * (pairs - 1));
    }

    /** All against all, with different weights, and errors drawn from a normal distribution of a given width. */
    private static List<Comparison> duels(SplittableRandom random, double noise) {
        List<Comparison> duels = new ArrayList<>();
        for (int a = 0; a < PLANTED.length; a++) {
            for (int b = a + 1; b < PLANTED.length; b++) {
                long pairs = 200 + 300 * a + 70 * b;
                double error = 1.1 / Math.sqrt(pairs);
                double mean = PLANTED[a] - PLANTED[b] + noise * error * normal(random);
                duels.add(new Comparison(a, b, moments(mean, 1.1, pairs)));
            }
        }
        return duels;
    }

    /** Box and Muller, Annals of Mathematical Statistics 29 (1958). */
    private static double normal(SplittableRandom random) {
        return Math.sqrt(-2 * Math.log(1 - random.nextDouble())) * Math.cos(2 * Math.PI * random.nextDouble());
    }

    @Test
    void exactResultsGiveTheRatingsBack() {
        Ratings ratings = Ratings.fit(5, 1, duels(new SplittableRandom(1), 0)).orElseThrow();
        for (int player = 0; player < 5; player++) {
            assertEquals(PLANTED[player], ratings.points(player), 1e-9);
        }
        assertEquals(0, ratings.error(1));
        assertEquals(0, ratings.chiSquared(), 1e-9);
        assertEquals(6, ratings.freedom());
        assertEquals(1, ratings.chance(), 1e-9);
    }

    /** Over many tournaments the estimates scatter around the truth as their errors say, and chi-squared is as it should be. */
    @Test
    void errorsAreHonest() {
        SplittableRandom random = new SplittableRandom(2);
        int runs = 2000;
        double[] scaled = new double[5];
        double[] bias = new double[5];
        double chiSquared = 0;
        int unlikely = 0;
        for (int run = 0; run < runs; run++) {
            Ratings ratings = Ratings.fit(5, 1, duels(random, 1)).orElseThrow();
            double wider = Math.max(1, Math.sqrt(ratings.chiSquared() / ratings.freedom()));
            for (int player = 0; player < 5; player++) {
                double off = ratings.points(player) - PLANTED[player];
                bias[player] += off / runs;
                scaled[player] += player == 1 ? 0 : Math.pow(off / ratings.error(player) * wider, 2) / runs;
            }
            chiSquared += ratings.chiSquared() / runs;
            unlikely += ratings.chance() < 0.1 ? 1 : 0;
        }
        for (int player : new int[] {0, 2, 3, 4}) {
            assertEquals(1, scaled[player], 5 * Math.sqrt(2.0 / runs));
            assertEquals(0, bias[player], 0.005);
        }
        assertEquals(6, chiSquared, 5 * Math.sqrt(12.0 / runs));
        assertEquals(0.1, unlikely / (double) runs, 5 * Math.sqrt(0.09 / runs));
    }

    /** Two unknowns by hand: results 1 (A-B), 1 (B-C), 0.5 (A-C), equal weights; each result is off by 1/2. */
    @Test
    void resultsThatDoNotAddUpWidenTheErrors() {
        List<Comparison> duels = List.of(
                new Comparison(0, 1, moments(1, 1, 100)),
                new Comparison(1, 2, moments(1, 1, 100)),
                new Comparison(0, 2, moments(0.5, 1, 100)));
        Ratings ratings = Ratings.fit(3, 2, duels).orElseThrow();
        assertEquals(1, ratings.points(0), 1e-12);
        assertEquals(0.5, ratings.points(1), 1e-12);
        assertEquals(1, ratings.freedom());
        // Each residual is 0.5, five standard errors of 0.1: chi-squared 75. Unwidened, the error is 0.1 sqrt(2/3).
        assertEquals(75, ratings.chiSquared(), 1e-9);
        assertEquals(Math.sqrt(75) * 0.1 * Math.sqrt(2 / 3.0), ratings.error(0), 1e-9);
        assertTrue(ratings.chance() < 1e-10, "chance: " + ratings.chance());
    }

    @Test
    void twoPlayersHaveTheirResult() {
        Ratings ratings = Ratings.fit(2, 0, List.of(new Comparison(0, 1, moments(0.4, 1.2, 900))))
                .orElseThrow();
        assertEquals(-0.4, ratings.points(1), 1e-12);
        assertEquals(1.2 / 30, ratings.error(1), 1e-12);
        assertEquals(1, ratings.chance());
    }

    @Test
    void playersThatNeverMetHaveNoRatings() {
        Comparison one = new Comparison(0, 1, moments(0.4, 1, 100));
        Comparison other = new Comparison(2, 3, moments(0.4, 1, 100));
        assertEquals(Optional.empty(), Ratings.fit(4, 0, List.of(one, other)));
        assertEquals(Optional.empty(), Ratings.fit(2, 0, List.of()));
        assertTrue(Ratings.fit(4, 0, List.of(one, other, new Comparison(3, 1, moments(0, 1, 100))))
                .isPresent());
    }

    /** A duel without any spread must not weigh without limit. */
    @Test
    void identicalPlayersAreRatedAlike() {
        List<Comparison> duels = List.of(
                new Comparison(0, 1, new RunningMean(100, 0, 0)),
                new Comparison(0, 2, moments(0.3, 1, 100)),
                new Comparison(1, 2, moments(0.3, 1, 100)));
        Ratings ratings = Ratings.fit(3, 2, duels).orElseThrow();
        assertEquals(0.3, ratings.points(0), 1e-9);
        assertEquals(0.3, ratings.points(1), 1e-9);
    }
}
