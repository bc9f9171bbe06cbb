package org.pipwright.engine.matchtable;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.pipwright.engine.score.MatchScore;

/**
 * Endings of a match by plain recursion over positions, all 36 throws and every cube there can be, straight from the rules.
 * A side is a list of the points its checkers stand on, all within 1 to 6.
 */
final class NaiveEndings {
    private final MatchTable table;
    private final Map<String, Double> known = new HashMap<>();
    private final Map<String, Set<List<Integer>>> found = new HashMap<>();

    NaiveEndings(MatchTable table) {
        this.table = table;
    }

    /** Chance of the side on roll to win the match before it decides about the cube. */
    double best(List<Integer> mine, List<Integer> theirs, MatchScore score, int cube, char owner) {
        double roll = rolling(mine, theirs, score, cube, owner);
        if (!mayDouble(score, cube, owner)) {
            return roll;
        }
        double take = rolling(mine, theirs, score, 2 * cube, 't');
        return Math.max(roll, Math.min(take, table.chanceAfter(score, cube)));
    }

    /** A cube that shows as many points as both sides need together is turned by nobody with sense: the recursion ends. */
    private static boolean mayDouble(MatchScore score, int cube, char owner) {
        return !score.crawford() && owner != 't' && cube < score.mine() + score.theirs();
    }

    /** The same once it has decided to roll; the owner is c(entre), m(e) or t(hem). */
    double rolling(List<Integer> mine, List<Integer> theirs, MatchScore score, int cube, char owner) {
        String key = mine + " " + theirs + " " + score + " " + cube + owner;
        Double value = known.get(key);
        if (value == null) {
            value = sum(mine, theirs, score, cube, owner) / 36;
            known.put(key, value);
        }
        return value;
    }

    private double sum(List<Integer> mine, List<Integer> theirs, MatchScore score, int cube, char owner) {
        char swapped = owner == 'c' ? 'c' : owner == 'm' ? 't' : 'm';
        double sum = 0;
        for (int die = 1; die <= 6; die++) {
            for (int other = 1; other <= 6; other++) {
                double most = 0;
                for (List<Integer> next : known(mine, die, other)) {
                    double worth = next.isEmpty()
                            ? table.chanceAfter(score, cube)
                            : 1 - best(theirs, next, score.swapped(), cube, swapped);
                    most = Math.max(most, worth);
                }
                sum += most;
            }
        }
        return sum;
    }

    private Set<List<Integer>> known(List<Integer> side, int die, int other) {
        return found.computeIfAbsent(side + " " + die + other, key -> plays(side, die, other));
    }

    /** What a throw can make of a side, which is in order. */
    static Set<List<Integer>> plays(List<Integer> side, int die, int other) {
        if (die == other) {
            Set<List<Integer>> after = Set.of(side);
            for (int n = 0; n < 4; n++) {
                after = each(after, die);
            }
            return after;
        }
        Set<List<Integer>> both = new HashSet<>(each(each(Set.of(side), die), other));
        both.addAll(each(each(Set.of(side), other), die));
        return both;
    }

    /** All ways to play one die from each of some sides; a side that is off stays off. */
    private static Set<List<Integer>> each(Set<List<Integer>> sides, int die) {
        return sides.stream()
                .flatMap(side -> side.isEmpty() ? Set.of(side).stream() : one(side, die).stream())
                .collect(Collectors.toSet());
    }

    private static Set<List<Integer>> one(List<Integer> side, int die) {
        int highest = side.stream().mapToInt(Integer::intValue).max().orElseThrow();
        Set<List<Integer>> after = new HashSet<>();
        for (int i = 0; i < side.size(); i++) {
            int point = side.get(i);
            Integer[] next = side.toArray(new Integer[0]);
            if (point > die) {
                next[i] = point - die;
                Arrays.sort(next);
                after.add(List.of(next));
            } else if (point == die || point == highest) {
                List<Integer> left = new ArrayList<>(side);
                left.remove(i);
                after.add(List.copyOf(left));
            }
        }
        return after;
    }
}
