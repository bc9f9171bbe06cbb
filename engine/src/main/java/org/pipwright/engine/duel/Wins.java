package org.pipwright.engine.duel;

/**
 * Games one side has won, by what they were worth.
 *
 * @param single single games
 * @param gammon gammons, backgammons not counted
 * @param backgammon backgammons
 */
public record Wins(long single, long gammon, long backgammon) {
    /** No games yet. */
    public static final Wins NONE = new Wins(0, 0, 0);

    /**
     * One game more.
     *
     * @param points what it was worth: 1, 2 or 3
     * @return the counts with it
     */
    public Wins plus(int points) {
        return new Wins(
                single + (points == 1 ? 1 : 0), gammon + (points == 2 ? 1 : 0), backgammon + (points == 3 ? 1 : 0));
    }

    /**
     * Two sets of games put together.
     *
     * @param other the other set
     * @return the counts of both
     */
    public Wins plus(Wins other) {
        return new Wins(single + other.single, gammon + other.gammon, backgammon + other.backgammon);
    }

    /**
     * All games won.
     *
     * @return sum of the three counts
     */
    public long total() {
        return single + gammon + backgammon;
    }

    /**
     * Points won.
     *
     * @return 1 for a single game, 2 for a gammon, 3 for a backgammon
     */
    public long points() {
        return single + 2 * gammon + 3 * backgammon;
    }
}
