package org.pipwright.engine.features;

import org.pipwright.engine.naive.NaiveBoard;

/** The measures once more, straight from their definitions on plain counts. */
final class NaiveMeasures {
    private static final int AHEAD = 12;

    private NaiveMeasures() {}

    /** Throws, of the 36 ordered ones, for which some sequence of steps that the dice allow hits a blot. */
    static int hittingRolls(NaiveBoard board) {
        int rolls = 0;
        for (int die = 1; die <= 6; die++) {
            rolls += hits(board, new int[] {die, die, die, die}, 0) ? 1 : 0;
            for (int other = 1; other < die; other++) {
                boolean eitherOrder = hits(board, new int[] {die, other}, 0) || hits(board, new int[] {other, die}, 0);
                rolls += eitherOrder ? 2 : 0;
            }
        }
        return rolls;
    }

    /** Whether playing dice in order, from anywhere and as far as one likes, hits. */
    private static boolean hits(NaiveBoard board, int[] dice, int played) {
        for (int from = 1; played < dice.length && from <= NaiveBoard.BAR; from++) {
            NaiveBoard next = board.step(from, dice[played]);
            if (next == null) {
                continue;
            }
            boolean hit = next.theirs(NaiveBoard.BAR) > board.theirs(NaiveBoard.BAR);
            if (hit || hits(next, dice, played + 1)) {
                return true;
            }
        }
        return false;
    }

    /** Throws, of the 36 ordered ones, with which a checker of the other side could not enter. */
    static int dancingRolls(NaiveBoard board) {
        int rolls = 0;
        for (int die = 1; die <= 6; die++) {
            for (int other = 1; other <= 6; other++) {
                // A die of n enters on the other side's place 25 - n, which is the mover's own point n.
                rolls += board.mine(die) >= 2 && board.mine(other) >= 2 ? 1 : 0;
            }
        }
        return rolls;
    }

    /** Most points in a row with two or more checkers. */
    static int longestPrime(NaiveBoard board) {
        int longest = 0;
        int row = 0;
        for (int point = 1; point <= 24; point++) {
            row = board.mine(point) >= 2 ? row + 1 : 0;
            longest = Math.max(longest, row);
        }
        return longest;
    }

    /** Mean of the most pips the rearmost checker makes alone, as a share of the mean roll. */
    static double freedom(NaiveBoard board) {
        int rearmost = board.rearmost();
        if (rearmost == 0) {
            return 1;
        }
        int pips = 0;
        int unhindered = 0;
        for (int die = 1; die <= 6; die++) {
            for (int other = 1; other <= 6; other++) {
                if (die == other) {
                    pips += mostPips(board, rearmost, new int[] {die, die, die, die});
                    unhindered += 4 * die;
                } else {
                    pips += Math.max(
                            mostPips(board, rearmost, new int[] {die, other}),
                            mostPips(board, rearmost, new int[] {other, die}));
                    unhindered += die + other;
                }
            }
        }
        return (double) pips / unhindered;
    }

    /** Pips made by playing dice in order; a die that is blocked is left out, and the next tried. */
    private static int mostPips(NaiveBoard board, int rearmost, int[] dice) {
        int made = 0;
        for (int die : dice) {
            made += open(board, rearmost, made + die) ? die : 0;
        }
        return made;
    }

    private static boolean open(NaiveBoard board, int rearmost, int ahead) {
        int point = rearmost - ahead;
        return ahead > AHEAD || point < 1 || board.theirs(25 - point) < 2;
    }
}
