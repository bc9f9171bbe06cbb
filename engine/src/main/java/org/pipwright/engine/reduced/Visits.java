package org.pipwright.engine.reduced;

import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * How often games between a policy and the best player reach each position, by pushing the chance of being there along
 * the plays until next to nothing is still under way. Games start with a roll that is no double.
 */
final class Visits {
    private static final double[] PROBABILITY =
            Roll.all().stream().mapToDouble(Roll::probability).toArray();

    private final ReducedGame game;
    private final Followers[] followers;

    /** Expected times of being on roll, by player (0 the policy, 1 the best player) and cell. */
    private final double[][] visits;

    /** Chance that has arrived and not been passed on. */
    private final double[][] pending;

    /** Smaller chances wait until more has arrived; passing each on at once takes twice as long. */
    private double least;

    private Visits(ReducedGame game, byte[] policy, byte[] best) {
        this.game = game;
        followers = new Followers[] {new Followers(game, policy), new Followers(game, best)};
        visits = new double[2][game.cells()];
        pending = new double[2][game.cells()];
    }

    /**
     * Finds the visits of games that one of the two starts.
     *
     * @param starter 0 the policy, 1 the best player
     * @param left stop when the games not yet followed to their end have this chance or less
     */
    static Visits of(ReducedGame game, byte[] policy, byte[] best, int starter, double left) {
        Visits visits = new Visits(game, policy, best);
        visits.open(starter);
        double underWay = 1;
        while (underWay > left) {
            visits.least = underWay / game.cells();
            visits.descend(false);
            underWay = visits.underWay();
        }
        visits.least = 0;
        visits.descend(true);
        return visits;
    }

    /** Expected times a player is on roll in a cell, the opening roll of the game not counted. */
    double of(int player, int cell) {
        return visits[player][cell];
    }

    private void open(int starter) {
        int start = game.cell(Position.start(game.checkers()));
        int size = game.sides().size();
        Rows rows = new Rows(game.sides(), start % size);
        for (Roll roll : Roll.opening()) {
            int next = followers[starter].cell(rows, start / size, start % size, roll.index());
            pending[1 - starter][next] += 1.0 / Roll.opening().size();
        }
    }

    /** Passes on what is pending, cells of large totals first; races only at the very end, since none returns from them. */
    private void descend(boolean races) {
        Sides sides = game.sides();
        for (int total = 2 * sides.mostPips(); total >= 2; total--) {
            int lowest = Math.max(1, total - sides.mostPips());
            int highest = Math.min(total - 1, sides.mostPips());
            for (int opponent = sides.firstOfPips(lowest); opponent < sides.firstOfPips(highest + 1); opponent++) {
                int pips = total - sides.pips(opponent);
                row(opponent, sides.firstOfPips(pips), sides.firstOfPips(pips + 1), races);
            }
        }
    }

    private void row(int opponent, int from, int to, boolean races) {
        Rows rows = null;
        for (int me = from; me < to; me++) {
            int cell = game.cell(me, opponent);
            if (Math.max(pending[0][cell], pending[1][cell]) > least && (races || game.contact(me, opponent))) {
                rows = rows == null ? new Rows(game.sides(), opponent) : rows;
                push(0, rows, me, opponent);
                push(1, rows, me, opponent);
            }
        }
    }

    private void push(int player, Rows rows, int me, int opponent) {
        int cell = game.cell(me, opponent);
        double chance = pending[player][cell];
        if (chance <= least) {
            return;
        }
        pending[player][cell] = 0;
        visits[player][cell] += chance;
        for (int roll = 0; roll < Roll.COUNT; roll++) {
            int next = followers[player].cell(rows, me, opponent, roll);
            if (next % game.sides().size() != 0) {
                pending[1 - player][next] += chance * PROBABILITY[roll];
            }
        }
    }

    /** Chance of games still in positions with contact. */
    private double underWay() {
        double sum = 0;
        int size = game.sides().size();
        for (int me = 1; me < size; me++) {
            for (int opponent = 1; opponent < size; opponent++) {
                if (game.contact(me, opponent)) {
                    sum += pending[0][game.cell(me, opponent)] + pending[1][game.cell(me, opponent)];
                }
            }
        }
        return sum;
    }
}
