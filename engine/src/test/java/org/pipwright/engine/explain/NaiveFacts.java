package org.pipwright.engine.explain;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaivePlayGenerator;
import org.pipwright.engine.naive.NaiveRules;

/** The facts counted checker by checker and play by play, from their definitions. */
final class NaiveFacts {
    private NaiveFacts() {}

    /** Points held on one board and not on another, from low to high. */
    static List<Integer> heldOnlyOn(NaiveBoard board, NaiveBoard other) {
        List<Integer> points = new ArrayList<>();
        for (int point = 1; point <= 24; point++) {
            if (board.mine(point) >= 2 && other.mine(point) < 2) {
                points.add(point);
            }
        }
        return points;
    }

    /** What the other side's next roll can do to the mover's blots. */
    static Exposure exposure(NaiveBoard after) {
        NaiveBoard next = after.swapped();
        if (NaiveRules.finished(after)) {
            return new Exposure(List.of(), 0, 0, 0, 0);
        }
        int[] perPoint = new int[25];
        int shots = 0;
        int costly = 0;
        int idle = 0;
        int taken = 0;
        for (int one = 1; one <= 6; one++) {
            for (int two = 1; two <= 6; two++) {
                boolean any = false;
                boolean[] struck = new boolean[25];
                var results = NaivePlayGenerator.generate(next, one, two).results();
                int most = 0;
                for (NaiveBoard result : results) {
                    int pips = 0;
                    for (int point = 1; point <= 24; point++) {
                        pips += (25 - point) * (after.mine(point) == 1 && result.theirs(point) == 0 ? 1 : 0);
                    }
                    most = Math.max(most, pips);
                    for (int point = 1; point <= 24; point++) {
                        struck[point] |= after.mine(point) == 1 && result.theirs(point) == 0;
                    }
                }
                for (int point = 1; point <= 24; point++) {
                    perPoint[point] += struck[point] ? 1 : 0;
                    any |= struck[point];
                }
                taken += most;
                costly += most >= 4 ? 1 : 0;
                shots += any ? 1 : 0;
                idle += results.size() == 1 && results.contains(next) ? 1 : 0;
            }
        }
        List<Blot> blots = new ArrayList<>();
        for (int point = 1; point <= 24; point++) {
            if (after.mine(point) == 1) {
                blots.add(new Blot(point, perPoint[point]));
            }
        }
        return new Exposure(blots, shots, costly, idle, taken / 36.0);
    }

    /** Throws with which the mover, to play again, can hold more of its points 3 to 7 and the other side's. */
    static int newPoints(NaiveBoard after) {
        int throwsThatDo = 0;
        for (int one = 1; one <= 6; one++) {
            for (int two = 1; two <= 6; two++) {
                throwsThatDo += NaivePlayGenerator.generate(after, one, two).results().stream()
                                .anyMatch(result -> goodPoints(result) > goodPoints(after))
                        ? 1
                        : 0;
            }
        }
        return throwsThatDo;
    }

    private static int goodPoints(NaiveBoard board) {
        int held = 0;
        for (int point = 3; point <= 7; point++) {
            held += board.mine(point) >= 2 ? 1 : 0;
            held += board.mine(25 - point) >= 2 ? 1 : 0;
        }
        return held;
    }

    /** Pips by which the mover's checkers are beyond its 6 point. */
    static int toHome(NaiveBoard board) {
        int pips = 0;
        for (int point = 7; point <= 25; point++) {
            pips += board.mine(point) * (point - 6);
        }
        return pips;
    }

    /** The mover's prime: every row from every point on, the best by length, then by what is behind, then the lowest. */
    static Prime prime(NaiveBoard board) {
        Prime best = Prime.NONE;
        for (int from = 1; from <= 24; from++) {
            int length = 0;
            while (from + length <= 24 && board.mine(from + length) >= 2) {
                length++;
            }
            int behind = 0;
            for (int theirs = 1; theirs <= 25; theirs++) {
                behind += 25 - theirs < from ? board.theirs(theirs) : 0;
            }
            boolean starts = from == 1 || board.mine(from - 1) < 2;
            boolean better = length > best.length() || length == best.length() && behind > best.trapped();
            if (starts && length > 0 && behind > 0 && better) {
                best = new Prime(length, from, behind);
            }
        }
        return best;
    }
}
