package org.pipwright.engine.naive;

import java.util.HashSet;
import java.util.Set;

/**
 * All positions that one roll can lead to, written from the rules text: play the dice one after the other in every
 * order and from every place, then keep only what the rules about using the dice allow. Slow and obviously right; the
 * fast generator is checked against it.
 */
public final class NaivePlayGenerator {
    private NaivePlayGenerator() {}

    /** Everything a roll allows. */
    public static NaivePlays generate(NaiveBoard board, int die, int other) {
        return die == other ? doubles(board, die) : twoDice(only(board), Math.max(die, other), Math.min(die, other));
    }

    /** A double is played up to four times: as often as possible. */
    private static NaivePlays doubles(NaiveBoard board, int die) {
        Set<NaiveBoard> reached = only(board);
        int steps = 0;
        while (steps < 4) {
            Set<NaiveBoard> next = afterOne(reached, die);
            if (next.isEmpty()) {
                break;
            }
            reached = next;
            steps++;
        }
        return new NaivePlays(reached, steps, steps >= 1, steps >= 1, steps >= 2, steps >= 2);
    }

    /** Both dice if possible in either order; else one, the larger if it can be played; else none. */
    private static NaivePlays twoDice(Set<NaiveBoard> before, int larger, int smaller) {
        Set<NaiveBoard> afterLarger = afterOne(before, larger);
        Set<NaiveBoard> afterSmaller = afterOne(before, smaller);
        Set<NaiveBoard> largerThenSmaller = afterOne(afterLarger, smaller);
        Set<NaiveBoard> smallerThenLarger = afterOne(afterSmaller, larger);

        Set<NaiveBoard> afterBoth = new HashSet<>(largerThenSmaller);
        afterBoth.addAll(smallerThenLarger);
        Set<NaiveBoard> allowed = before;
        int steps = 0;
        if (!afterBoth.isEmpty()) {
            allowed = afterBoth;
            steps = 2;
        } else if (!afterLarger.isEmpty()) {
            allowed = afterLarger;
            steps = 1;
        } else if (!afterSmaller.isEmpty()) {
            allowed = afterSmaller;
            steps = 1;
        }
        return new NaivePlays(
                allowed,
                steps,
                !afterLarger.isEmpty(),
                !afterSmaller.isEmpty(),
                !largerThenSmaller.isEmpty(),
                !smallerThenLarger.isEmpty());
    }

    /** Everything that one step of a die, from any place, makes of any of the boards. */
    private static Set<NaiveBoard> afterOne(Set<NaiveBoard> boards, int die) {
        Set<NaiveBoard> after = new HashSet<>();
        for (NaiveBoard board : boards) {
            for (int from = 1; from <= NaiveBoard.BAR; from++) {
                NaiveBoard moved = board.step(from, die);
                if (moved != null) {
                    after.add(moved);
                }
            }
        }
        return after;
    }

    private static Set<NaiveBoard> only(NaiveBoard board) {
        Set<NaiveBoard> set = new HashSet<>();
        set.add(board);
        return set;
    }
}
