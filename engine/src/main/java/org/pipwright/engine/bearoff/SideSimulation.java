package org.pipwright.engine.bearoff;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/**
 * Distributions of one side's rolls in a race: from the one-sided table where it reaches, or one of {@link FewCheckers},
 * else by playing the side alone many times until a table takes over, whose distributions are then averaged. Only the way
 * to the table is left to chance, and the first two rolls of the paths are spread evenly over all 36 x 36 throws. The dice
 * are the same for the same position, so answers repeat.
 *
 * <p>Before a table is reached, the play is the one with the least {@link BearInGuess} of the mean rolls, or the least mean
 * where a play reaches a table of few checkers, with a small preference for leaving the opponent's home. A side that plays
 * to save the gammon takes the one with the least {@link FirstOffGuess}, one that plays to save the backgammon the one with
 * the least {@link Getaway}.
 *
 * <p>Measured against exact tables, root mean squares over 200 random races each ({@code benchmarks/run races}; table of 6
 * points as horizon): win chances of fifteen checkers on points 1 to 8 are off by 0.002, of ten on 1 to 10 by 0.002; gammon
 * chances of one to six checkers against fifteen on 1 to 8 by 0.0014, at most 0.014.
 *
 * <p>Serves one thread.
 */
final class SideSimulation {
    private static final int THROWS = 36;

    private static final int HIGHEST_AT_HOME = 6;

    /** Paths for each pair of first throws. */
    private static final int EACH = 2;

    private static final int PATHS = THROWS * THROWS * EACH;

    /** What leaving the opponent's home, where a backgammon would be lost, may cost on the way. */
    private static final double ROLLS_PER_STRAGGLER = 0.05;

    /**
     * Play by a guess needs more rolls than the best, so means would be too high. What it costs on average is taken off: so
     * many rolls by the root of the pips that checkers stand outside home. Against exact means of 50 to 60 random sides each
     * that is, in rolls, 0.013 for six checkers on 16 points, 0.005 for eight on 12, 0.010 for nine there, 0.008 for eleven on
     * 11, 0.004 for ten on 10 and 0.006 for fifteen on 8 and for five on 20, at 4.7, 3.7, 3.8, 3.8, 3.0, 2.3 and 5.5 roots.
     */
    private static final double ROLLS_TOO_MANY_PER_ROOT = 0.002;

    /** How far the cost of play by a guess is from that, about, in the same unit; some formations cost more than others. */
    private static final double ROLLS_OFF_PER_ROOT = 0.003;

    /** Up to so many checkers exact means are compared with guesses. */
    private static final int MIXED = 6;

    /** Among plays that are equal in what a side plays for, the one that is better for the race; so many rolls for one. */
    private static final double TIE = 1e-3;

    private final OneSidedTable table;
    private final BearInGuess guess;
    private final FirstOffGuess first;
    private final PlayGenerator generator = new PlayGenerator();
    private final KnownMoves known = new KnownMoves();
    private final int[] planes = new int[Planes.STRIDE];
    private final int[] scratch = new int[Planes.SIDE];
    private final double[] entries = new double[OneSidedTable.MAX_ROLLS];

    /** What a side plays for until the table is reached. */
    private enum Goal {
        /** To bear off all in the fewest rolls. */
        ALL,
        /** To bear off the first, and save the gammon. */
        FIRST,
        /** To leave the opponent's home, and save the backgammon. */
        AWAY
    }

    SideSimulation(OneSidedTable table) {
        this.table = table;
        this.guess = new BearInGuess(table);
        this.first = new FirstOffGuess(table);
    }

    /** The outlook of a side that no opponent can hinder, playing for the fewest rolls in all. */
    SideOutlook outlook(int[] planes, int at) {
        boolean noneOff = (Planes.occupied(planes, at) & 1) == 0;
        if (table.index().covers(planes, at) && !away(planes, at)) {
            int arrangement = table.index().of(planes, at);
            RollSpread first = noneOff ? table.rollsToFirst(arrangement) : new RollSpread();
            return new SideOutlook(Basis.DISTRIBUTIONS, table.rolls(arrangement), 0, first, new RollSpread());
        }
        OneSidedTable few = noneOff ? null : FewCheckers.covering(planes, at);
        if (few != null) {
            // With a checker off no gammon is lost, so that nothing else counts.
            RollSpread off = few.rolls(few.index().of(planes, at));
            return new SideOutlook(Basis.DISTRIBUTIONS, off, 0, new RollSpread(), new RollSpread());
        }
        Sums sums = simulate(planes, at, Goal.ALL);
        double root = Math.sqrt(outerPips(planes, at));
        return new SideOutlook(
                Basis.SIMULATED,
                sums.spread(sums.off).sooner(ROLLS_TOO_MANY_PER_ROOT * root),
                Math.hypot(sums.error(), ROLLS_OFF_PER_ROOT * root),
                noneOff ? sums.spread(sums.first) : new RollSpread(),
                sums.spread(sums.away));
    }

    private static int outerPips(int[] planes, int at) {
        int outer = Planes.occupied(planes, at) & Planes.ON_BOARD & ~Planes.HOME;
        int[] side = new int[Planes.SIDE];
        for (int k = 0; k < Planes.SIDE; k++) {
            side[k] = planes[at + k] & outer;
        }
        return Planes.pips(side, 0) - HIGHEST_AT_HOME * Planes.checkers(side, 0, outer);
    }

    /** The rolls to the first checker off of a side that has none off and plays for just that. */
    RollSpread hurriedFirst(int[] planes, int at) {
        Sums sums = simulate(planes, at, Goal.FIRST);
        return sums.spread(sums.first);
    }

    /** The rolls until a side that plays for just that has left the opponent's home. */
    RollSpread hurriedAway(int[] planes, int at) {
        Sums sums = simulate(planes, at, Goal.AWAY);
        return sums.spread(sums.away);
    }

    private static boolean away(int[] planes, int at) {
        return (Planes.occupied(planes, at) & Getaway.OPPONENTS_HOME) != 0;
    }

    private Sums simulate(int[] from, int at, Goal goal) {
        Sums sums = new Sums();
        SplittableRandom random = new SplittableRandom(Arrays.hashCode(Arrays.copyOfRange(from, at, at + Planes.SIDE)));
        for (int path = 0; path < PATHS; path++) {
            Arrays.fill(planes, 0);
            System.arraycopy(from, at, planes, 0, Planes.SIDE);
            play(path, random, sums, goal);
        }
        return sums;
    }

    /** Survival chances summed over the paths. */
    private static final class Sums {
        final double[] off = new double[2 * OneSidedTable.MAX_ROLLS];
        final double[] first = new double[2 * OneSidedTable.MAX_ROLLS];
        final double[] away = new double[2 * OneSidedTable.MAX_ROLLS];

        /** Rolls of the first path of each pair of first throws, and the squares of what the second differs from it. */
        private final double[] rolls = new double[PATHS / EACH];

        private double squares;

        /** Two paths have the same first throws: their differences are all that chance does to the mean. */
        void mean(int path, double mean) {
            if (path < rolls.length) {
                rolls[path] = mean;
            } else {
                squares += Math.pow(mean - rolls[path - rolls.length], 2);
            }
        }

        /** Standard error of the mean. */
        double error() {
            return Math.sqrt(squares) / PATHS;
        }

        RollSpread spread(double[] sums) {
            double[] survival = new double[sums.length];
            double last = 1;
            for (int k = 0; k < sums.length; k++) {
                // Rounding must not make a chance rise.
                last = Math.min(last, sums[k] / PATHS);
                survival[k] = last;
            }
            return new RollSpread(survival);
        }

        static void add(int rolls, double[] entries, int count, double[] sums) {
            for (int k = 0; k < rolls; k++) {
                sums[k]++;
            }
            for (int k = 0; k < count; k++) {
                sums[rolls + k] += entries[k];
            }
        }
    }

    private void play(int path, SplittableRandom random, Sums sums, Goal goal) {
        int rolls = 0;
        boolean out = true;
        while (true) {
            if (out && !away(planes, 0)) {
                Sums.add(rolls, entries, 0, sums.away);
                out = false;
            }
            if (!out && (goal == Goal.AWAY || horizon(goal) != null)) {
                break;
            }
            int face = rolls == 0 ? path % THROWS : rolls == 1 ? path / THROWS % THROWS : random.nextInt(THROWS);
            move(Roll.of(face / 6 + 1, face % 6 + 1), goal);
            rolls++;
        }
        if (goal == Goal.AWAY) {
            return;
        }
        OneSidedTable table = horizon(goal);
        int arrangement = table.index().of(planes, 0);
        Sums.add(rolls, entries, table.survival(arrangement, entries), sums.off);
        sums.mean(path, rolls + table.mean(arrangement));
        // The roll that brought the last checker home may also have borne off the first.
        boolean noneOff = (Planes.occupied(planes, 0) & 1) == 0;
        Sums.add(rolls, entries, noneOff ? table.survivalToFirst(arrangement, entries) : 0, sums.first);
    }

    /** The table that knows the rest; null if there is none yet. */
    private OneSidedTable horizon(Goal goal) {
        if (table.index().covers(planes, 0)) {
            return table;
        }
        boolean someOff = (Planes.occupied(planes, 0) & 1) != 0;
        return goal == Goal.ALL && someOff ? FewCheckers.covering(planes, 0) : null;
    }

    private void move(Roll roll, Goal goal) {
        int what = 1 + roll.index() + Roll.COUNT * goal.ordinal();
        if (known.move(planes, what)) {
            return;
        }
        int size = generator.generate(planes, 0, roll.high(), roll.low());
        int[] results = generator.results();
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < size; i++) {
            double rolls = rolls(results, i * Planes.STRIDE, goal);
            if (rolls < least) {
                least = rolls;
                best = i;
            }
        }
        known.keep(planes, what, results, best * Planes.STRIDE);
        System.arraycopy(results, best * Planes.STRIDE, planes, 0, Planes.SIDE);
    }

    /** About how many rolls a side needs for what it plays for. */
    private double rolls(int[] results, int at, Goal goal) {
        double all = guess.rolls(results, at, scratch);
        switch (goal) {
            case FIRST:
                return first.rolls(results, at, scratch) + TIE * all;
            case AWAY:
                return Getaway.rolls(results, at, scratch) + TIE * all;
            default:
                if (Planes.checkers(results, at, Planes.ON_BOARD) <= MIXED) {
                    OneSidedTable few = FewCheckers.covering(results, at);
                    if (few != null) {
                        return few.mean(few.index().of(results, at));
                    }
                }
                return all + ROLLS_PER_STRAGGLER * Planes.checkers(results, at, Getaway.OPPONENTS_HOME);
        }
    }
}
