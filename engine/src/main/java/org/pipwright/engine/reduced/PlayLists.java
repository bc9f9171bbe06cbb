package org.pipwright.engine.reduced;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/**
 * For each arrangement of the mover and each roll, every way to play it on an empty board, once and for all. What an
 * opponent changes is only which landings are blocked and which hit, so that a play against any opponent is one test of
 * a mask.
 *
 * <p>A list has groups in order of preference: both dice (or four, three, two, one steps of a double), the larger die,
 * the smaller one, no move. The legal plays are the unblocked ones of the first group that has any; they come in the
 * order of {@link org.pipwright.engine.play.PlayGenerator}, some of them twice. Immutable.
 */
final class PlayLists {
    /** Set in a landing mask that starts a new group. */
    static final int NEW_GROUP = 1 << 31;

    private static final int OUTSIDE_HOME = Planes.ON_BOARD & ~Planes.HOME;

    private final int[] first;
    private final int[] results;
    private final int[] landings;

    PlayLists(Sides sides) {
        first = new int[sides.size() * Roll.COUNT + 1];
        Builder builder = new Builder(sides);
        for (int side = 0; side < sides.size(); side++) {
            for (Roll roll : Roll.all()) {
                builder.list(side, roll);
                first[side * Roll.COUNT + roll.index() + 1] = builder.size;
            }
        }
        results = Arrays.copyOf(builder.results, builder.size);
        landings = Arrays.copyOf(builder.landings, builder.size);
    }

    /** Where each list starts: side * 21 + roll index; one more entry at the end. */
    int[] first() {
        return first;
    }

    /** The mover's arrangement after each play. */
    int[] results() {
        return results;
    }

    /** The points each play lands on, as bits in the mover's numbering, and {@link #NEW_GROUP}. */
    int[] landings() {
        return landings;
    }

    /** Appends lists. */
    private static final class Builder {
        private final Sides sides;
        private final int[] planes = new int[Planes.SIDE];
        private final Set<Long> group = new HashSet<>();
        private int[] results = new int[1 << 12];
        private int[] landings = new int[1 << 12];
        private int size;

        Builder(Sides sides) {
            this.sides = sides;
        }

        void list(int side, Roll roll) {
            sides.copyPlanes(side, planes, 0);
            if (roll.isDouble()) {
                for (int depth = 4; depth >= 1; depth--) {
                    group.clear();
                    steps(roll.high(), depth, 0, Planes.BAR);
                }
            } else {
                group.clear();
                pair(roll.high(), roll.low());
                pair(roll.low(), roll.high());
                group.clear();
                steps(roll.high(), 1, 0, -1);
                group.clear();
                steps(roll.low(), 1, 0, -1);
            }
            group.clear();
            add(0);
        }

        /** One die, then the other, sources from the lowest up. */
        private void pair(int die, int then) {
            for (int movable = sources(die); movable != 0; movable &= movable - 1) {
                int from = Integer.numberOfTrailingZeros(movable);
                int to = move(from, die);
                steps(then, 1, landing(to), -1);
                undo(from, to);
            }
        }

        /**
         * So many steps of one die. With a limit, sources are taken from the limit down, none higher than the one
         * before; with -1, any source, from the lowest up.
         */
        private void steps(int die, int left, int landed, int limit) {
            if (left == 0) {
                add(landed);
                return;
            }
            int movable = sources(die);
            if (limit >= 0) {
                movable &= (2 << limit) - 1;
            }
            while (movable != 0) {
                int bit = limit >= 0 ? Integer.highestOneBit(movable) : Integer.lowestOneBit(movable);
                movable ^= bit;
                int from = Integer.numberOfTrailingZeros(bit);
                int to = move(from, die);
                steps(die, left - 1, landed | landing(to), limit >= 0 ? from : -1);
                undo(from, to);
            }
        }

        /** Places a die can be played from with nobody in the way. */
        private int sources(int die) {
            int candidates = Planes.occupied(planes, 0) & Planes.ON_BOARD;
            if (candidates >>> Planes.BAR != 0) {
                return 1 << Planes.BAR;
            }
            int movable = candidates & -1 << die + 1;
            if ((candidates & OUTSIDE_HOME) == 0) {
                movable |= candidates & 1 << die;
                if (candidates >>> die == 0) {
                    movable |= Integer.highestOneBit(candidates);
                }
            }
            return movable;
        }

        private int move(int from, int die) {
            int to = Math.max(from - die, Planes.OFF);
            Planes.remove(planes, 0, from);
            Planes.add(planes, 0, to);
            return to;
        }

        private void undo(int from, int to) {
            Planes.remove(planes, 0, to);
            Planes.add(planes, 0, from);
        }

        private static int landing(int to) {
            return to == Planes.OFF ? 0 : 1 << to;
        }

        private void add(int landed) {
            int result = sides.index(planes, 0);
            boolean startsGroup = group.isEmpty();
            if (!group.add((long) result << 32 | landed)) {
                return;
            }
            if (size == results.length) {
                results = Arrays.copyOf(results, 2 * size);
                landings = Arrays.copyOf(landings, 2 * size);
            }
            results[size] = result;
            landings[size++] = landed | (startsGroup ? NEW_GROUP : 0);
        }
    }
}
