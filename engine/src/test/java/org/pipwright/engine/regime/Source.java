package org.pipwright.engine.regime;

import java.util.SplittableRandom;
import java.util.function.Consumer;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaiveRules;

/**
 * Where random positions come from: a random start, from which random plays lead on for some plies. Each source aims at
 * some regimes; what its positions are is for {@link Regime} to say.
 */
public enum Source {
    /** The first plays of the full game. */
    OPENING(4, Source::start),
    /** Whole games of 15 checkers. */
    GAME(500, Source::start),
    /** Whole games of 1 to 14 checkers from anywhere. */
    REDUCED_GAME(40, Source::reduced),
    /** Middle games anywhere. */
    MIDDLE(2, Source::middle),
    /** 1 to 15 checkers on the bar against a home board of 0 to 6 points. */
    BAR(1, Source::bar),
    /** A home board of six points. */
    CLOSED_BOARD(1, Source::closedBoard),
    /** Four to seven points in a row with something behind them. */
    PRIME(1, Source::prime),
    /** Sides that have passed each other. */
    RACE(3, Source::race),
    /** All home against checkers that still have to pass. */
    BEAROFF_CONTACT(2, Source::bearoffContact),
    /** Both sides home or on the way, none to pass. */
    BEAROFF(3, Source::bearoff),
    /** A few stacks against seven points, where dice are hard to play. */
    BLOCKED(1, Source::blocked);

    private final int plies;
    private final Consumer<Layout> lay;

    Source(int plies, Consumer<Layout> lay) {
        this.plies = plies;
        this.lay = lay;
    }

    /** How many plays to follow from a sample before a fresh one is due. */
    public int plies() {
        return plies;
    }

    /** A random unfinished board. */
    public NaiveBoard sample(SplittableRandom random) {
        while (true) {
            Layout layout = new Layout(random);
            lay.accept(layout);
            NaiveBoard board = layout.board();
            if (!NaiveRules.finished(board)) {
                return board;
            }
        }
    }

    private static void start(Layout layout) {
        for (int[] side : new int[][] {layout.mine, layout.theirs}) {
            side[24] = 2;
            side[13] = 5;
            side[8] = 3;
            side[6] = 5;
        }
    }

    private static void reduced(Layout layout) {
        int checkers = layout.between(1, 14);
        layout.mine[NaiveBoard.BAR] = layout.between(0, 3) == 0 ? layout.between(0, checkers) : 0;
        layout.mine[NaiveBoard.OFF] = layout.between(0, checkers - layout.mine[NaiveBoard.BAR]) / 2;
        layout.theirs[NaiveBoard.OFF] = layout.between(0, checkers) / 2;
        layout.fillMine(checkers);
        layout.fillTheirs(checkers);
    }

    private static void middle(Layout layout) {
        layout.scatterMine(layout.between(0, 6), 18, 24);
        layout.scatterTheirs(layout.between(0, 6), 18, 24);
        layout.scatterTheirs(layout.between(0, 8), 4, 8);
        layout.fillMine(15);
        layout.fillTheirs(15);
    }

    private static void bar(Layout layout) {
        layout.mine[NaiveBoard.BAR] = layout.between(1, 15);
        layout.theirs[NaiveBoard.BAR] = layout.between(0, 3) == 0 ? layout.between(1, 3) : 0;
        layout.scatterTheirs(layout.between(0, 12), 1, 6);
        layout.fillTheirs(15);
        layout.fillMine(15);
    }

    private static void closedBoard(Layout layout) {
        for (int place = 1; place <= 6; place++) {
            layout.theirs[place] = 2;
        }
        layout.mine[NaiveBoard.BAR] = layout.between(0, 1) * layout.between(1, 15);
        layout.scatterTheirs(3, 1, 24);
        layout.fillMine(15);
    }

    private static void prime(Layout layout) {
        int length = layout.between(4, 7);
        int first = layout.between(1, 12);
        for (int place = first; place < first + length; place++) {
            layout.theirs[place] = 2;
        }
        layout.mine[NaiveBoard.BAR] = layout.between(0, 5) == 0 ? 1 : 0;
        layout.fillTheirs(15);
        layout.scatterMine(layout.between(1, 4), Math.max(19, 25 - first + 1), 24);
        layout.fillMine(15);
    }

    private static void race(Layout layout) {
        int mineUpTo = layout.between(7, 20);
        layout.mine[NaiveBoard.OFF] = layout.between(0, 3) / 3;
        layout.theirs[NaiveBoard.OFF] = layout.between(0, 14);
        layout.scatterMine(15 - layout.mine[NaiveBoard.OFF], 1, mineUpTo);
        layout.scatterTheirs(15 - layout.theirs[NaiveBoard.OFF], 1, 24 - mineUpTo);
    }

    private static void bearoffContact(Layout layout) {
        layout.mine[NaiveBoard.OFF] = layout.between(0, 14);
        layout.theirs[NaiveBoard.BAR] = layout.between(0, 2) / 2;
        layout.scatterTheirs(layout.between(1, 5), 19, 24);
        layout.scatterMine(15 - layout.mine[NaiveBoard.OFF], 1, 6);
        layout.fillTheirs(15);
    }

    private static void bearoff(Layout layout) {
        layout.mine[NaiveBoard.OFF] = layout.between(0, 14);
        layout.theirs[NaiveBoard.OFF] = layout.between(0, 14);
        layout.scatterMine(15 - layout.mine[NaiveBoard.OFF], 1, layout.between(1, 6));
        layout.scatterTheirs(15 - layout.theirs[NaiveBoard.OFF], 1, layout.between(1, 18));
    }

    private static void blocked(Layout layout) {
        for (int made = 0; made < 7; ) {
            int place = layout.between(1, 24);
            if (layout.theirs[place] == 0) {
                layout.theirs[place] = 2;
                made++;
            }
        }
        layout.fillTheirs(15);
        layout.mine[NaiveBoard.BAR] = layout.between(0, 3) / 3;
        layout.mine[NaiveBoard.OFF] = layout.between(0, 12);
        layout.fillMine(15);
    }
}
