package org.pipwright.engine.matchtable;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.pipwright.engine.score.MatchScore;

/**
 * Endings of a match at one score by plain recursion, as {@link NaiveEndings} has them and with its plays, but with values
 * kept in arrays, so that six checkers a side take a second: every play of every throw, every cube there can be, both sides
 * seen as the one on roll. It shares no order of plays, no lanes and no view of one side with the program.
 */
final class SolvedEndings {
    private static final int MAX_CHECKERS = 6;
    private static final int THROWS = 36;
    private static final int FACES = 6;
    private static final int OWNERS = 3;

    /** All arrangements; the first is that no checker is left. */
    private static final List<List<Integer>> SIDES = sides();

    private static final Map<List<Integer>, Integer> NUMBERS = numbers();

    /** By arrangement and throw, what the throw can make of it; found when first needed. */
    private static final int[][][] NEXT = new int[SIDES.size()][][];

    private final MatchTable table;
    private final MatchScore score;

    /** By whether the side on roll is that of the score, the cube and the side's arrangement, for all of the other. */
    private final double[][][] known;

    SolvedEndings(MatchTable table, MatchScore score) {
        this.table = table;
        this.score = score;
        int cubes = Integer.SIZE - Integer.numberOfLeadingZeros(score.mine() + score.theirs()) + 1;
        known = new double[2 * cubes * OWNERS][SIDES.size()][];
    }

    private static List<List<Integer>> sides() {
        List<List<Integer>> all = new ArrayList<>(List.of(List.of()));
        for (int from = 0; all.get(from).size() < MAX_CHECKERS; from++) {
            List<Integer> fewer = all.get(from);
            for (int point = fewer.isEmpty() ? 1 : fewer.get(fewer.size() - 1); point <= 6; point++) {
                List<Integer> more = new ArrayList<>(fewer);
                more.add(point);
                all.add(List.copyOf(more));
            }
        }
        return all;
    }

    private static Map<List<Integer>, Integer> numbers() {
        Map<List<Integer>, Integer> numbers = new HashMap<>();
        SIDES.forEach(side -> numbers.put(side, numbers.size()));
        return numbers;
    }

    private static synchronized int[][] next(int side) {
        if (NEXT[side] == null) {
            NEXT[side] = new int[THROWS][];
            for (int i = 0; i < THROWS; i++) {
                int same = i % FACES * FACES + i / FACES;
                NEXT[side][i] = same < i
                        ? NEXT[side][same]
                        : NaiveEndings.plays(SIDES.get(side), 1 + i / FACES, 1 + i % FACES).stream()
                                .mapToInt(NUMBERS::get)
                                .toArray();
            }
        }
        return NEXT[side];
    }

    /** Chance of the side on roll to win the match once it has decided to roll; the score is seen from it. */
    double rolling(List<Integer> mine, List<Integer> theirs, int cube, char owner) {
        return rolling(NUMBERS.get(mine), NUMBERS.get(theirs), true, cube, owner);
    }

    private double best(int mine, int theirs, boolean mineFirst, int cube, char owner) {
        double roll = rolling(mine, theirs, mineFirst, cube, owner);
        boolean mayDouble = !score.crawford() && owner != 't' && cube < score.mine() + score.theirs();
        if (!mayDouble) {
            return roll;
        }
        double take = rolling(mine, theirs, mineFirst, 2 * cube, 't');
        return Math.max(roll, Math.min(take, won(mineFirst, cube)));
    }

    private double won(boolean mineFirst, int cube) {
        return table.chanceAfter(mineFirst ? score : score.swapped(), cube);
    }

    private double rolling(int mine, int theirs, boolean mineFirst, int cube, char owner) {
        int place = (Integer.numberOfTrailingZeros(cube) * OWNERS + "cmt".indexOf(owner)) * 2 + (mineFirst ? 0 : 1);
        double[] row = known[place][mine];
        if (row == null) {
            row = new double[SIDES.size()];
            Arrays.fill(row, Double.NaN);
            known[place][mine] = row;
        }
        if (Double.isNaN(row[theirs])) {
            char swapped = owner == 'c' ? 'c' : owner == 'm' ? 't' : 'm';
            double won = won(mineFirst, cube);
            double sum = 0;
            for (int[] plays : next(mine)) {
                double most = 0;
                for (int play : plays) {
                    double worth = play == 0 ? won : 1 - best(theirs, play, !mineFirst, cube, swapped);
                    most = Math.max(most, worth);
                }
                sum += most;
            }
            row[theirs] = sum / THROWS;
        }
        return row[theirs];
    }
}
