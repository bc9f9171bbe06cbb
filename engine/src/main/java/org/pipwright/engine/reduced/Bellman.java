package org.pipwright.engine.reduced;

import org.pipwright.engine.roll.Roll;

/**
 * One step of value iteration on rows of cells: the value before the roll is the mean over the 21 rolls of the value of a
 * play, a play's value being minus that of the position it leaves to the opponent (Bellman 1957). Values are points per
 * game for the side on roll, without a cube.
 */
final class Bellman {
    private final ReducedGame game;
    private final Sides sides;
    private final double[] values;
    private final byte[] choices;
    private final Followers followers;
    private final int[] first;
    private final int[] results;
    private final int[] landings;
    private final double[] chance = new double[Roll.COUNT];
    private boolean races = true;

    /** Works on the given values in place and keeps the best plays in choices (their places in the list). */
    Bellman(ReducedGame game, double[] values, byte[] choices) {
        this.game = game;
        this.sides = game.sides();
        this.values = values;
        this.choices = choices;
        followers = new Followers(game, choices);
        first = game.lists().first();
        results = game.lists().results();
        landings = game.lists().landings();
        for (Roll roll : Roll.all()) {
            chance[roll.index()] = roll.probability();
        }
    }

    /** Leaves positions without contact alone from now on: they lead to none with contact, so one sweep solves them. */
    void leaveRaces() {
        races = false;
    }

    private boolean skips(int me, int opponent) {
        return !game.playable(me, opponent) || !races && !game.contact(me, opponent);
    }

    /** Chooses the best plays and stores their value. */
    double improve(int opponent, int from, int to) {
        Rows rows = new Rows(sides, opponent);
        double largest = 0;
        for (int me = from; me < to; me++) {
            if (!skips(me, opponent)) {
                largest = Math.max(largest, store(me, opponent, best(rows, me, opponent)));
            }
        }
        return largest;
    }

    /** Stores the value of the plays chosen last. */
    double evaluate(int opponent, int from, int to) {
        Rows rows = new Rows(sides, opponent);
        double largest = 0;
        for (int me = from; me < to; me++) {
            if (!skips(me, opponent)) {
                largest = Math.max(largest, store(me, opponent, chosen(rows, me, opponent)));
            }
        }
        return largest;
    }

    /** How far values are from those of the best plays; changes no value. */
    double residual(int opponent, int from, int to) {
        Rows rows = new Rows(sides, opponent);
        double largest = 0;
        for (int me = from; me < to; me++) {
            if (game.playable(me, opponent)) {
                double change = best(rows, me, opponent) - values[game.cell(me, opponent)];
                largest = Math.max(largest, Math.abs(change));
            }
        }
        return largest;
    }

    private double store(int me, int opponent, double value) {
        int cell = game.cell(me, opponent);
        double change = Math.abs(value - values[cell]);
        values[cell] = value;
        return change;
    }

    /** The hot loop: all plays of all rolls. */
    private double best(Rows rows, int me, int opponent) {
        int choice = (opponent * sides.size() + me) * Roll.COUNT;
        int list = me * Roll.COUNT;
        double sum = 0;
        for (int roll = 0; roll < Roll.COUNT; roll++) {
            double lowest = Double.POSITIVE_INFINITY;
            int start = first[list + roll];
            int end = first[list + roll + 1];
            int chosen = start;
            for (int play = start; play < end; play++) {
                int landing = landings[play];
                if (landing < 0 && lowest < Double.POSITIVE_INFINITY) {
                    break;
                }
                if ((landing & rows.blocked) != 0) {
                    continue;
                }
                double value = values[rows.row[rows.hits(landing)] + results[play]];
                if (value < lowest) {
                    lowest = value;
                    chosen = play;
                }
            }
            choices[choice + roll] = (byte) (chosen - start);
            sum -= chance[roll] * lowest;
        }
        return sum;
    }

    private double chosen(Rows rows, int me, int opponent) {
        double sum = 0;
        for (int roll = 0; roll < Roll.COUNT; roll++) {
            sum -= chance[roll] * values[followers.cell(rows, me, opponent, roll)];
        }
        return sum;
    }
}
