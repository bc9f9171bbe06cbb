package org.pipwright.engine.score;

import java.io.Serializable;
import org.pipwright.engine.PublicApi;

/**
 * The score of an unfinished match as the points each side still needs, seen from one side.
 *
 * <p>Crawford rule (common practice, no source): the first game after a side has come to need one point is played
 * without doubling; in all later games the cube is back. A one-point match has no Crawford game.
 *
 * @param mine points this side needs to win the match, 1 to {@value #LONGEST}
 * @param theirs points the other side needs, 1 to {@value #LONGEST}
 * @param crawford whether the game about to be played is the Crawford game
 */
@PublicApi
public record MatchScore(int mine, int theirs, boolean crawford) implements Serializable {
    /** Longest match, in points. */
    public static final int LONGEST = 1000;

    /**
     * Checks the score.
     *
     * @param mine points this side needs
     * @param theirs points the other side needs
     * @param crawford whether the game is the Crawford game
     * @throws IllegalArgumentException if a side needs less than 1 or more than {@value #LONGEST} points, or the Crawford
     *     game is claimed where exactly one side must need one point and does not
     */
    public MatchScore {
        for (int away : new int[] {mine, theirs}) {
            if (away < 1 || away > LONGEST) {
                throw new IllegalArgumentException(
                        "a side needs 1 to " + LONGEST + " points in an unfinished match, not " + away);
            }
        }
        if (crawford && (mine == 1) == (theirs == 1)) {
            throw new IllegalArgumentException("at " + mine + "-away against " + theirs
                    + "-away there is no Crawford game: it is played when exactly one side needs one point");
        }
    }

    /**
     * The score before the first game.
     *
     * @param length points that win the match, 1 to {@value #LONGEST}
     * @return both sides need that many
     */
    public static MatchScore ofLength(int length) {
        return new MatchScore(length, length, false);
    }

    /**
     * Whether the cube is in play again after the Crawford game, and no longer of use to the leader.
     *
     * @return true if exactly one side needs one point and this is not the Crawford game
     */
    public boolean postCrawford() {
        return !crawford && (mine == 1) != (theirs == 1);
    }

    /**
     * The same score seen from the other side.
     *
     * @return sides exchanged
     */
    public MatchScore swapped() {
        return new MatchScore(theirs, mine, crawford);
    }

    /**
     * Whether a game of so many points ends the match.
     *
     * @param points points this side wins, negative if it loses them
     * @return true if the winner needed no more
     */
    public boolean ends(int points) {
        return points >= mine || -points >= theirs;
    }

    /**
     * The score after a game that does not end the match.
     *
     * @param points points this side wins, negative if it loses them, not 0
     * @return the score before the next game, with its Crawford mark
     * @throws IllegalArgumentException if points is 0 or the match would be over
     */
    public MatchScore after(int points) {
        if (points == 0 || ends(points)) {
            throw new IllegalArgumentException("no score follows " + points + " points at " + this);
        }
        int myNext = points > 0 ? mine - points : mine;
        int theirNext = points < 0 ? theirs + points : theirs;
        boolean nobodyWasNear = mine > 1 && theirs > 1;
        return new MatchScore(myNext, theirNext, nobodyWasNear && (myNext == 1 || theirNext == 1));
    }
}
