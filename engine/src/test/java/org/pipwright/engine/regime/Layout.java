package org.pipwright.engine.regime;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.pipwright.engine.naive.NaiveBoard;

/** Builds a random board checker by checker; never puts both sides on one point. */
final class Layout {
    private static final int ANY = 24;

    final SplittableRandom random;
    final int[] mine = new int[NaiveBoard.PLACES];
    final int[] theirs = new int[NaiveBoard.PLACES];

    Layout(SplittableRandom random) {
        this.random = random;
    }

    NaiveBoard board() {
        return NaiveBoard.of(mine, theirs);
    }

    /** A random number from low to high, both included. */
    int between(int low, int high) {
        return low + random.nextInt(high - low + 1);
    }

    /** Gives the mover more checkers on own points low to high. */
    void scatterMine(int checkers, int low, int high) {
        scatter(mine, theirs, checkers, low, high);
    }

    /** Gives the other side more checkers on its own points low to high. */
    void scatterTheirs(int checkers, int low, int high) {
        scatter(theirs, mine, checkers, low, high);
    }

    /** Gives the mover the rest of a number of checkers, anywhere on the 24 points. */
    void fillMine(int checkers) {
        scatterMine(checkers - Arrays.stream(mine).sum(), 1, ANY);
    }

    /** Gives the other side the rest of a number of checkers, anywhere on the 24 points. */
    void fillTheirs(int checkers) {
        scatterTheirs(checkers - Arrays.stream(theirs).sum(), 1, ANY);
    }

    /** Each checker joins a stack with a chance fixed for this call, else takes any point free for its side. */
    private void scatter(int[] side, int[] other, int checkers, int low, int high) {
        int[] free = new int[high - low + 1];
        int frees = 0;
        for (int place = low; place <= high; place++) {
            if (other[25 - place] == 0) {
                free[frees++] = place;
            }
        }
        int joinsOf4 = random.nextInt(4);
        int last = NaiveBoard.OFF;
        for (int i = 0; i < checkers; i++) {
            if (frees == 0) {
                side[NaiveBoard.OFF]++;
                continue;
            }
            if (last == NaiveBoard.OFF || random.nextInt(4) >= joinsOf4) {
                last = free[random.nextInt(frees)];
            }
            side[last]++;
        }
    }
}
