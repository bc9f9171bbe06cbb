package org.pipwright.bench.strength;

/** Sums of what was lost on a set of decisions. */
final class Score {
    private int decisions;
    private int best;
    private double sum;
    private double squares;
    private double seconds;

    void add(double loss, boolean isBest, double time) {
        decisions++;
        best += isBest ? 1 : 0;
        sum += loss;
        squares += loss * loss;
        seconds += time;
    }

    int decisions() {
        return decisions;
    }

    /** Points per decision. */
    double meanLoss() {
        return sum / decisions;
    }

    /** Standard error of the mean loss, from the spread between decisions. */
    double lossError() {
        double mean = meanLoss();
        return Math.sqrt(Math.max(0, squares / decisions - mean * mean) / Math.max(1, decisions - 1));
    }

    /** Share of decisions on which the best play was chosen. */
    double bestShare() {
        return (double) best / decisions;
    }

    double bestShareError() {
        double share = bestShare();
        return Math.sqrt(share * (1 - share) / decisions);
    }

    double secondsEach() {
        return seconds / decisions;
    }
}
