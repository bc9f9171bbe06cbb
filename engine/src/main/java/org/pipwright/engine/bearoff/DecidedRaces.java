package org.pipwright.engine.bearoff;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;

/**
 * Exact chances of races that one side is sure to win with its next two rolls at most. All that is left to decide is whether the
 * other saves the gammon or the backgammon; it is taken to play for the fewest points, and what it can reach until then is
 * gone through play by play. Serves one thread.
 */
final class DecidedRaces {
    /** Most rolls that the winner may need. */
    private static final int MOST = 2;

    private static final int CHECKERS_A_ROLL = 4;

    private final PlayGenerator generator = new PlayGenerator();

    /** How often each {@link GameResult} comes of a side that has one roll left; by its planes, for one question. */
    private final Map<List<Integer>, double[]> afterOne = new HashMap<>();

    /**
     * The chances of the side on roll.
     *
     * @param planes a race
     * @param mine outlook of the side on roll
     * @param theirs outlook of the opponent
     * @return empty if neither side is sure to win so soon
     */
    Optional<Outcomes> chances(int[] planes, SideOutlook mine, SideOutlook theirs) {
        afterOne.clear();
        if (wins(mine, planes, Planes.SIDE, mine.off().most() - 1)) {
            double[] now = results(planes, Planes.SIDE);
            double[] later = mine.off().most() == 1 ? now : afterOne(planes, Planes.SIDE);
            double[] won = mix(mine.off().exactly(1), now, later);
            return Optional.of(new Outcomes(won[0], won[1], won[2], 0, 0, 0));
        }
        if (wins(theirs, planes, 0, theirs.off().most())) {
            double[] lost = toRoll(planes, theirs.off().exactly(1));
            return Optional.of(new Outcomes(0, 0, 0, lost[0], lost[1], lost[2]));
        }
        return Optional.empty();
    }

    /** Whether a side is done before the other, whose planes are given and which rolls so often until then, can be. */
    private static boolean wins(SideOutlook side, int[] planes, int otherAt, int otherRolls) {
        return side.basis() == Basis.DISTRIBUTIONS
                && side.off().most() <= MOST
                && Planes.checkers(planes, otherAt, Planes.ON_BOARD) > CHECKERS_A_ROLL * otherRolls;
    }

    /** What a side that is to roll loses, if the other is done with so much chance before it rolls again, else after that. */
    private double[] toRoll(int[] planes, double done) {
        double[] mean = new double[GameResult.values().length];
        for (Roll roll : Roll.all()) {
            int count = generator.generate(planes, 0, roll.high(), roll.low());
            int[] found = Arrays.copyOf(generator.results(), count * Planes.STRIDE);
            double[] least = null;
            for (int i = 0; i < count; i++) {
                double[] now = results(found, i * Planes.STRIDE);
                double[] reached = done == 1 ? now : mix(done, now, afterOne(found, i * Planes.STRIDE));
                least = least == null || points(reached) < points(least) ? reached : least;
            }
            add(roll.probability(), least, mean);
        }
        return mean;
    }

    /** The same for a side with a single roll left, which others have come to as a rule. */
    private double[] afterOne(int[] planes, int at) {
        List<Integer> key = List.of(planes[at], planes[at + 1], planes[at + 2], planes[at + 3]);
        double[] known = afterOne.get(key);
        if (known == null) {
            int[] alone = Arrays.copyOf(Arrays.copyOfRange(planes, at, at + Planes.SIDE), Planes.STRIDE);
            known = GameResult.of(alone, 0) == GameResult.SINGLE ? results(alone, 0) : toRoll(alone, 1);
            afterOne.put(key, known);
        }
        return known;
    }

    /** The result if the game ended now, for certain. */
    private static double[] results(int[] planes, int at) {
        double[] chances = new double[GameResult.values().length];
        chances[GameResult.of(planes, at).points() - 1] = 1;
        return chances;
    }

    private static double[] mix(double share, double[] first, double[] second) {
        double[] mixed = new double[first.length];
        add(share, first, mixed);
        add(1 - share, second, mixed);
        return mixed;
    }

    private static void add(double share, double[] what, double[] sums) {
        for (int k = 0; k < sums.length; k++) {
            sums[k] += share * what[k];
        }
    }

    private static double points(double[] results) {
        double points = 0;
        for (int k = 0; k < results.length; k++) {
            points += (k + 1) * results[k];
        }
        return points;
    }
}
