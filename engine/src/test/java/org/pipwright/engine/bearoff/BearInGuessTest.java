package org.pipwright.engine.bearoff;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/** Guesses are found when they are asked for, and kept: neither may show in them. */
class BearInGuessTest {
    private final OneSidedTable table = Tables.oneSided(6, 15);

    @Test
    void whatWasAskedBeforeChangesNothing() {
        BearInGuess used = new BearInGuess(table);
        SplittableRandom random = new SplittableRandom(11);
        int[] scratch = new int[Planes.SIDE];
        for (int i = 0; i < 200; i++) {
            int[] side = side(random);
            int[] before = side.clone();
            double first = used.rolls(side, 0, scratch);
            assertEquals(new BearInGuess(table).rolls(side, 0, scratch), first);
            assertEquals(first, used.rolls(side, 0, scratch));
            for (int k = 0; k < Planes.SIDE; k++) {
                assertEquals(before[k], side[k]);
            }
        }
    }

    /** All home: the table's mean, and nothing else. */
    @Test
    void sidesAtHomeHaveTheirMean() {
        BearInGuess guess = new BearInGuess(table);
        int[] side = new int[Planes.SIDE];
        for (int arrangement = 0; arrangement < table.index().size(); arrangement += 97) {
            table.index().write(arrangement, side, 0);
            assertEquals((float) table.mean(arrangement), guess.rolls(side, 0, new int[Planes.SIDE]));
        }
    }

    /** The least over all ways to land: one checker just outside, against each home point by hand. */
    @Test
    void oneOutsideLandsWhereItIsBest() {
        BearInGuess guess = new BearInGuess(table);
        int[] scratch = new int[Planes.SIDE];
        int[] empty = new int[Planes.SIDE];
        Planes.add(empty, 0, 7);
        double lone = guess.rolls(empty, 0, scratch) - least(new int[Planes.SIDE]);
        // What is added to the least mean depends on the home points; that of the same points cancels out.
        for (int home = 1; home <= 6; home++) {
            int[] side = new int[Planes.SIDE];
            Planes.add(side, 0, home);
            double least = least(side.clone());
            Planes.add(side, 0, 7);
            double added = guess.rolls(side, 0, scratch) - least;
            assertEquals(lone, added, 0.05, "a checker on the " + home + " point");
        }
    }

    private double least(int[] home) {
        double least = Double.POSITIVE_INFINITY;
        for (int point = 2; point <= 6; point++) {
            Planes.add(home, 0, point);
            least = Math.min(least, table.mean(table.index().of(home, 0)) + (6 - point) * 6 / 49.0);
            Planes.remove(home, 0, point);
        }
        return least;
    }

    private static int[] side(SplittableRandom random) {
        int[] side = new int[Planes.SIDE];
        int checkers = 1 + random.nextInt(Position.FULL);
        for (int n = 0; n < checkers; n++) {
            Planes.add(side, 0, 1 + random.nextInt(random.nextBoolean() ? 6 : 24));
        }
        for (int n = checkers; n < Position.FULL; n++) {
            Planes.add(side, 0, Planes.OFF);
        }
        return side;
    }
}
