package org.pipwright.engine.reduced;

import java.util.Arrays;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.roll.Roll;

/**
 * One step of value iteration with the cube: what rolling is worth with each owner, as {@link Bellman} finds it without a
 * cube, and then the better of rolling and doubling for the side that may. Works on the given values in place, which are
 * those before the decision about the cube.
 */
final class CubeBellman implements RowTask {
    /** Owners: nobody, the side on roll, the opponent. */
    static final int STATES = 3;

    private static final int CENTRED = 0;
    private static final int MINE = 1;
    private static final int THEIRS = 2;

    private final ReducedGame game;
    private final double[][] values;
    private final int[] first;
    private final int[] results;
    private final int[] landings;
    private final double[] chance = new double[Roll.COUNT];
    private boolean races = true;

    CubeBellman(ReducedGame game, double[][] values) {
        this.game = game;
        this.values = values;
        first = game.lists().first();
        results = game.lists().results();
        landings = game.lists().landings();
        for (Roll roll : Roll.all()) {
            chance[roll.index()] = roll.probability();
        }
    }

    static int state(CubeOwner owner) {
        return owner == CubeOwner.CENTRE ? CENTRED : owner == CubeOwner.ME ? MINE : THEIRS;
    }

    /** From what rolling is worth, what a double that is taken is worth. */
    static double taken(double[] rolling) {
        return 2 * rolling[THEIRS];
    }

    /** Leaves positions without contact alone from now on. */
    void leaveRaces() {
        races = false;
    }

    @Override
    public double run(int opponent, int from, int to) {
        Rows rows = new Rows(game.sides(), opponent);
        double[] rolling = new double[STATES];
        double[] lowest = new double[STATES];
        double largest = 0;
        for (int me = from; me < to; me++) {
            if (game.playable(me, opponent) && (races || game.contact(me, opponent))) {
                rolling(rows, me, rolling, lowest);
                double doubled = Math.min(taken(rolling), 1);
                int cell = game.cell(me, opponent);
                largest = Math.max(largest, store(CENTRED, cell, Math.max(rolling[CENTRED], doubled)));
                largest = Math.max(largest, store(MINE, cell, Math.max(rolling[MINE], doubled)));
                largest = Math.max(largest, store(THEIRS, cell, rolling[THEIRS]));
            }
        }
        return largest;
    }

    /** What rolling is worth in a cell with each owner. */
    void rolling(int cell, double[] out) {
        int size = game.sides().size();
        rolling(new Rows(game.sides(), cell % size), cell / size, out, new double[STATES]);
    }

    private double store(int state, int cell, double value) {
        double change = Math.abs(value - values[state][cell]);
        values[state][cell] = value;
        return change;
    }

    /** The plays are chosen for each owner apart. */
    private void rolling(Rows rows, int me, double[] out, double[] lowest) {
        int list = me * Roll.COUNT;
        Arrays.fill(out, 0);
        for (int roll = 0; roll < Roll.COUNT; roll++) {
            Arrays.fill(lowest, Double.POSITIVE_INFINITY);
            for (int play = first[list + roll]; play < first[list + roll + 1]; play++) {
                int landing = landings[play];
                if (landing < 0 && lowest[CENTRED] < Double.POSITIVE_INFINITY) {
                    break;
                }
                if ((landing & rows.blocked) == 0) {
                    int next = rows.row[rows.hits(landing)] + results[play];
                    lowest[CENTRED] = Math.min(lowest[CENTRED], values[CENTRED][next]);
                    lowest[MINE] = Math.min(lowest[MINE], values[THEIRS][next]);
                    lowest[THEIRS] = Math.min(lowest[THEIRS], values[MINE][next]);
                }
            }
            for (int state = 0; state < STATES; state++) {
                out[state] -= chance[roll] * lowest[state];
            }
        }
    }
}
