package org.pipwright.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.pipwright.engine.position.Position;

/**
 * Counts the distinct results of a roll on plain arrays, from the rules alone: all ways to play the dice one after the
 * other, of which those count that play the most dice, and of single dice the larger.
 */
public final class NaiveCount {
    private static final int BAR = 25;

    private NaiveCount() {}

    /** Number of distinct positions a roll leads to. */
    public static int of(Position position, int die, int other) {
        List<Integer> board = board(position);
        if (die == other) {
            return longest(board, new int[] {die, die, die, die}).size();
        }
        int larger = Math.max(die, other);
        int smaller = Math.min(die, other);
        Set<List<Integer>> both = new HashSet<>(after(after(Set.of(board), larger), smaller));
        both.addAll(after(after(Set.of(board), smaller), larger));
        if (!both.isEmpty()) {
            return both.size();
        }
        Set<List<Integer>> one = after(Set.of(board), larger);
        return one.isEmpty() ? longest(board, new int[] {smaller}).size() : one.size();
    }

    private static Set<List<Integer>> longest(List<Integer> board, int[] dice) {
        Set<List<Integer>> reached = Set.of(board);
        for (int die : dice) {
            Set<List<Integer>> next = after(reached, die);
            if (next.isEmpty()) {
                break;
            }
            reached = next;
        }
        return reached;
    }

    /** The mover's 26 counts, then the other side's. */
    private static List<Integer> board(Position position) {
        List<Integer> board = new ArrayList<>();
        for (int place = 0; place <= BAR; place++) {
            board.add(position.count(place));
        }
        for (int place = 0; place <= BAR; place++) {
            board.add(position.opponentCount(place));
        }
        return board;
    }

    private static Set<List<Integer>> after(Set<List<Integer>> boards, int die) {
        Set<List<Integer>> next = new HashSet<>();
        for (List<Integer> board : boards) {
            for (int from = 1; from <= BAR; from++) {
                if (legal(board, from, die)) {
                    next.add(moved(board, from, Math.max(0, from - die)));
                }
            }
        }
        return next;
    }

    private static boolean legal(List<Integer> board, int from, int die) {
        if (board.get(from) == 0 || board.get(BAR) > 0 && from != BAR) {
            return false;
        }
        int to = from - die;
        if (to > 0) {
            return board.get(26 + 25 - to) < 2;
        }
        boolean home = board.subList(7, 26).stream().allMatch(count -> count == 0);
        boolean none = board.subList(from + 1, 26).stream().allMatch(count -> count == 0);
        return home && (to == 0 || none);
    }

    private static List<Integer> moved(List<Integer> board, int from, int to) {
        Integer[] next = board.toArray(new Integer[0]);
        next[from]--;
        next[to]++;
        if (to > 0 && next[26 + 25 - to] == 1) {
            next[26 + 25 - to] = 0;
            next[26 + BAR]++;
        }
        return Arrays.asList(next);
    }
}
