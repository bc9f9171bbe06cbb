package org.pipwright.engine.matchtable;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.score.MatchScore;

/**
 * The cubes that a game without gammons can still have at a score, and what they make of its values. The values of a pair
 * of arrangements lie side by side, a lane each: first the chance to win the game, then for each cube that somebody may
 * still gain by turning the chance to win the match. With any other cube the match is won as often as the game says.
 *
 * <p>All values and owners are those of the side the score is seen from, here called the first side. Immutable.
 */
final class EndingCubes {
    /** The lane of the chance to win the game. */
    private static final int GAME = 0;

    private final MatchScore score;
    private final MatchTable table;

    /** From the highest value down; the cube of place i has lane 1 + i. */
    private final List<CubeState> live;

    private final Offer[] mine;
    private final Offer[] theirs;

    /** By lane, that of the same cube seen from the other side. */
    private final int[] swapped;

    /**
     * A double.
     *
     * @param lane of the cube before it
     * @param pass what it comes to if it is passed
     * @param taken what it comes to if it is taken
     */
    private record Offer(int lane, double pass, Line taken) {}

    /** A value that follows from a lane. */
    private record Line(int lane, double start, double slope) {
        double at(double[] values) {
            return start + slope * values[lane];
        }
    }

    EndingCubes(MatchScore score, MatchTable table) {
        this.score = score;
        this.table = table;
        live = live(score);
        mine = offers(CubeOwner.THEM);
        theirs = offers(CubeOwner.ME);
        swapped = new int[lanes()];
        for (int i = 0; i < live.size(); i++) {
            swapped[1 + i] = 1 + live.indexOf(live.get(i).swapped());
        }
    }

    private static List<CubeState> live(MatchScore score) {
        List<CubeState> live = new ArrayList<>();
        int most = Math.max(score.mine(), score.theirs());
        if (score.crawford() || most == 1) {
            return live;
        }
        for (int value = Integer.highestOneBit(most); value > 1; value /= 2) {
            if (score.mine() > value) {
                live.add(new CubeState(value, CubeOwner.ME));
            }
            if (score.theirs() > value) {
                live.add(new CubeState(value, CubeOwner.THEM));
            }
        }
        live.add(CubeState.START);
        return live;
    }

    /** The doubles that leave the cube to one side. */
    private Offer[] offers(CubeOwner taker) {
        List<Offer> offers = new ArrayList<>();
        for (int i = 0; i < live.size(); i++) {
            CubeState cube = live.get(i);
            if (cube.owner() != taker) {
                double pass = after(taker == CubeOwner.THEM ? cube.value() : -cube.value());
                offers.add(new Offer(1 + i, pass, line(new CubeState(2 * cube.value(), taker))));
            }
        }
        return offers.toArray(Offer[]::new);
    }

    private Line line(CubeState cube) {
        int place = live.indexOf(cube);
        if (place >= 0) {
            return new Line(1 + place, 0, 1);
        }
        double lost = after(-cube.value());
        return new Line(GAME, lost, after(cube.value()) - lost);
    }

    /** The score, seen from the first side. */
    MatchScore score() {
        return score;
    }

    /** Whether the two sides need as many points, so that they can change places. */
    boolean even() {
        return score.mine() == score.theirs();
    }

    /** At an even score, the lane of each lane's cube seen from the other side. */
    int[] swapped() {
        return swapped;
    }

    /** Number of lanes. */
    int lanes() {
        return 1 + live.size();
    }

    /** The first side's chance to win the match after a game of so many points of its own. */
    double after(int points) {
        return table.chanceAfter(score, points);
    }

    /** Writes all lanes of a game that one side has won. */
    void finished(boolean first, double[] out) {
        out[GAME] = first ? 1 : 0;
        for (int i = 0; i < live.size(); i++) {
            int value = live.get(i).value();
            out[1 + i] = after(first ? value : -value);
        }
    }

    /**
     * The value of a cube; in a match one that has been turned has an owner.
     *
     * @param values all lanes
     * @param cube the cube, seen from the first side
     * @return chance of the first side to win the match
     */
    double value(double[] values, CubeState cube) {
        return line(cube).at(values);
    }

    /**
     * From the values of rolling to those of the side on roll that may double before.
     *
     * @param values all lanes; those of cubes that side may turn are replaced
     * @param first whether the first side is on roll
     */
    void decide(double[] values, boolean first) {
        for (Offer offer : first ? mine : theirs) {
            double roll = values[offer.lane];
            double take = offer.taken.at(values);
            values[offer.lane] =
                    first ? Math.max(roll, Math.min(take, offer.pass)) : Math.min(roll, Math.max(take, offer.pass));
        }
    }
}
