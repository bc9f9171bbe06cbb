package org.pipwright.bench.cube;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.apache.commons.math3.stat.regression.MillerUpdatingRegression;
import org.pipwright.engine.cube.ContactEfficiency;
import org.pipwright.engine.cube.CubeEfficiency;

/** Least-squares fit of a {@link ContactEfficiency}: the model is linear in its numbers. */
final class ContactFit {
    private static final int NUMBERS = ContactEfficiency.NUMBERS;

    private final MillerUpdatingRegression fit = new MillerUpdatingRegression(2 * NUMBERS, false);

    /** One for each number, that is 1 there and else 0: what a number counts in a position. */
    private static final ContactEfficiency[] UNITS = new ContactEfficiency[NUMBERS];

    static {
        for (int i = 0; i < NUMBERS; i++) {
            double[] unit = new double[NUMBERS];
            unit[i] = 1;
            UNITS[i] = new ContactEfficiency(unit, unit);
        }
    }

    /** Adds positions, which count as much as those of any other call together. */
    void add(List<CubeKnown> positions) {
        double weight = 1 / Math.sqrt(positions.size());
        for (CubeKnown known : positions) {
            double[] truth = known.values().truth();
            double[] dead = known.values().model(CubeEfficiency.constant(0));
            double[] behind = known.values().model(new CubeEfficiency(1, 0));
            double[] ahead = known.values().model(new CubeEfficiency(0, 1));
            for (int k = 0; k < truth.length; k++) {
                double[] gains = new double[2 * NUMBERS];
                for (int i = 0; i < NUMBERS; i++) {
                    double share = UNITS[i].at(known.pips(), known.checkers()).behind();
                    gains[i] = weight * share * (behind[k] - dead[k]);
                    gains[NUMBERS + i] = weight * share * (ahead[k] - dead[k]);
                }
                fit.addObservation(gains, weight * (truth[k] - dead[k]));
            }
        }
    }

    /** The best fit, each number cut to [0, 1] and rounded to two digits. */
    ContactEfficiency best() {
        double[] best = numbers();
        return new ContactEfficiency(Arrays.copyOf(best, NUMBERS), Arrays.copyOfRange(best, NUMBERS, 2 * NUMBERS));
    }

    private double[] numbers() {
        return Arrays.stream(fit.regress().getParameterEstimates())
                .map(number -> Math.rint(100 * Math.min(1, Math.max(0, number))) / 100)
                .toArray();
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("behind");
        double[] numbers = numbers();
        for (int i = 0; i < numbers.length; i++) {
            text.append(i == NUMBERS ? ", ahead" : "").append(String.format(Locale.ROOT, " %.2f", numbers[i]));
        }
        return text.toString();
    }
}
