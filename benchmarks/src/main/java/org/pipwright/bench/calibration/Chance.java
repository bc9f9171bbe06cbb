package org.pipwright.bench.calibration;

import java.util.Locale;

/** A chance that is held against what happened: one of the six, or some of them together as players speak of them. */
enum Chance {
    WIN_SINGLE(0b000001, Scale.TENTHS),
    WIN_GAMMON(0b000010, Scale.GAMMONS),
    WIN_BACKGAMMON(0b000100, Scale.BACKGAMMONS),
    LOSE_SINGLE(0b001000, Scale.TENTHS),
    LOSE_GAMMON(0b010000, Scale.GAMMONS),
    LOSE_BACKGAMMON(0b100000, Scale.BACKGAMMONS),
    WIN_AT_ALL(0b000111, Scale.TENTHS),
    WIN_GAMMON_OR_MORE(0b000110, Scale.GAMMONS),
    LOSE_GAMMON_OR_MORE(0b110000, Scale.GAMMONS);

    private final int outcomes;
    private final Scale scale;

    Chance(int outcomes, Scale scale) {
        this.outcomes = outcomes;
        this.scale = scale;
    }

    /** Ranges of the prediction that are looked at apart; rare chances are mostly small, and need finer ones there. */
    enum Scale {
        TENTHS(0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100),
        GAMMONS(0, 2, 5, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100),
        BACKGAMMONS(0, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100);

        private final double[] edges;

        Scale(double... percents) {
            edges = new double[percents.length];
            for (int i = 0; i < edges.length; i++) {
                edges[i] = percents[i] / 100;
            }
        }

        /** Limits of the ranges, ascending from 0 to 1. */
        double[] edges() {
            return edges.clone();
        }
    }

    Scale scale() {
        return scale;
    }

    /** As in a heading: win gammon or more. */
    String words() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /** Whether the rules still allow it, by the bits of {@link org.pipwright.engine.rules.PossibleOutcomes}. */
    boolean possible(int mask) {
        return (mask & outcomes) != 0;
    }

    /** Whether it came true: 1 or 0. */
    int happened(int outcome) {
        return outcomes >> outcome & 1;
    }

    /** Its part of six chances. */
    double of(float[] chances, int at) {
        double sum = 0;
        for (int k = 0; outcomes >> k != 0; k++) {
            sum += (outcomes >> k & 1) * (double) chances[at + k];
        }
        return Math.min(1, sum);
    }
}
