package org.pipwright.engine.regime;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.pipwright.engine.naive.NaiveBoard;

/**
 * A named kind of (position, roll) pair. Whether a pair belongs to it is decided from the naive board and the naive
 * generator alone, whatever sampler the pair came from; one pair may belong to several.
 */
public final class Regime {
    private static final List<Regime> ALL = List.copyOf(all());

    private final String name;
    private final Predicate<RollCase> holds;

    private Regime(String name, Predicate<RollCase> holds) {
        this.name = name;
        this.holds = holds;
    }

    /** Every regime that a run has to meet. */
    public static List<Regime> list() {
        return ALL;
    }

    /** What the regime is called in a report. */
    public String name() {
        return name;
    }

    /** Whether a pair belongs here. */
    public boolean holds(RollCase pair) {
        return holds.test(pair);
    }

    private static List<Regime> all() {
        List<Regime> all = new ArrayList<>();
        addPositions(all);
        addBars(all);
        addPrimes(all);
        addRolls(all);
        addDice(all);
        for (int n = 1; n <= 14; n++) {
            int checkers = n;
            all.add(new Regime(n + " a side", c -> c.checkers == checkers));
        }
        return all;
    }

    private static void addPositions(List<Regime> all) {
        all.add(new Regime("opening", c -> c.checkers == 15 && c.unmoved() >= 24));
        all.add(new Regime("contact, none on the bar", c -> c.checkers == 15 && c.contact && c.onBar() == 0));
        all.add(new Regime("race, not all home", c -> c.checkers == 15 && !c.contact && !c.board.allHome()));
        all.add(new Regime("bear-off with contact", c -> c.checkers == 15 && c.contact && c.board.allHome()));
        all.add(new Regime("bear-off without contact", c -> c.checkers == 15 && !c.contact && c.board.allHome()));
    }

    private static void addBars(List<Regime> all) {
        for (int n = 1; n <= 15; n++) {
            int onBar = n;
            all.add(new Regime(n + " on the bar", c -> c.checkers == 15 && c.onBar() == onBar));
        }
        all.add(new Regime("both sides on the bar", c -> c.onBar() > 0 && c.board.theirs(NaiveBoard.BAR) > 0));
        all.add(new Regime("one of two dice enters", Regime::entersHalf));
    }

    private static boolean entersHalf(RollCase c) {
        return c.onBar() > 1 && !c.isDouble() && c.plays.larger() != c.plays.smaller();
    }

    private static void addPrimes(List<Regime> all) {
        all.add(new Regime("closed board, on the bar", c -> c.closedBoard() && c.onBar() > 0));
        all.add(new Regime("closed board, none on the bar", c -> c.closedBoard() && c.onBar() == 0));
        for (int n = 4; n <= 7; n++) {
            int length = n;
            all.add(new Regime("behind a prime of " + n, c -> c.primeAhead() == length));
        }
    }

    private static void addRolls(List<Regime> all) {
        all.add(new Regime("double", RollCase::isDouble));
        for (int n = 1; n <= 4; n++) {
            int times = n;
            all.add(new Regime("double played " + n + " times", c -> c.isDouble() && c.plays.steps() == times));
        }
        for (int n = 1; n <= 4; n++) {
            int hits = n;
            all.add(new Regime("up to " + n + " hit", c -> c.mostHits() == hits));
        }
        all.add(new Regime("no play", RollCase::noPlay));
        all.add(new Regime("borne off by a larger die", Regime::wastesPips));
    }

    private static boolean wastesPips(RollCase c) {
        return c.board.allHome() && c.larger > c.board.rearmost() && !c.noPlay();
    }

    private static void addDice(List<Regime> all) {
        all.add(new Regime("only the larger die", c -> oneDie(c) && !c.plays.smaller()));
        all.add(new Regime("only the smaller die", c -> oneDie(c) && !c.plays.larger()));
        all.add(new Regime("either die alone, so the larger", c -> oneDie(c) && c.plays.larger() && c.plays.smaller()));
        all.add(new Regime(
                "both dice, larger first only", c -> c.plays.largerThenSmaller() && !c.plays.smallerThenLarger()));
        all.add(new Regime(
                "both dice, smaller first only", c -> c.plays.smallerThenLarger() && !c.plays.largerThenSmaller()));
    }

    private static boolean oneDie(RollCase c) {
        return !c.isDouble() && c.plays.steps() == 1;
    }
}
