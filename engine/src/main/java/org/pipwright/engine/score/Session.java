package org.pipwright.engine.score;

/**
 * The running account of money games between two sides, seen from the first.
 *
 * @param games games finished
 * @param won points the first side has won in the games it won
 * @param lost points it has lost in the others
 */
public record Session(int games, long won, long lost) {
    /** A session before its first game. */
    public static final Session EMPTY = new Session(0, 0, 0);

    /**
     * The account after one more game.
     *
     * @param points points of the first side, negative if it lost them, not 0
     * @return the new account
     */
    public Session after(int points) {
        if (points == 0) {
            throw new IllegalArgumentException("a finished game is worth at least a point to one side");
        }
        return new Session(games + 1, won + Math.max(points, 0), lost + Math.max(-points, 0));
    }

    /**
     * What the first side is ahead.
     *
     * @return points, negative if it is behind
     */
    public long balance() {
        return won - lost;
    }

    /**
     * The account of the other side.
     *
     * @return wins and losses exchanged
     */
    public Session swapped() {
        return new Session(games, lost, won);
    }
}
