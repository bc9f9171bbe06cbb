package org.pipwright.engine.duel;

/**
 * Games one side has won with the cube in play.
 *
 * @param passes games the other side has passed
 * @param single games played out for the value of the cube; with the Jacoby rule gammons with an unturned cube too
 * @param gammon games worth twice the cube
 * @param backgammon games worth three times the cube
 * @param points all they were worth; in a match also what went beyond its end
 */
public record CubefulWins(long passes, long single, long gammon, long backgammon, long points) {
    /** No games yet. */
    public static final CubefulWins NONE = new CubefulWins(0, 0, 0, 0, 0);

    /**
     * One game more.
     *
     * @param passed whether the other side has passed it
     * @param worth points, a multiple of the cube
     * @param cube value of the cube at the end, before a double that was passed
     * @return the counts with it
     */
    CubefulWins plus(boolean passed, int worth, int cube) {
        int multiple = passed ? 0 : worth / cube;
        return new CubefulWins(
                passes + (passed ? 1 : 0),
                single + (multiple == 1 ? 1 : 0),
                gammon + (multiple == 2 ? 1 : 0),
                backgammon + (multiple == 3 ? 1 : 0),
                points + worth);
    }

    /**
     * Two sets of games put together.
     *
     * @param other the other set
     * @return the counts of both
     */
    CubefulWins plus(CubefulWins other) {
        return new CubefulWins(
                passes + other.passes,
                single + other.single,
                gammon + other.gammon,
                backgammon + other.backgammon,
                points + other.points);
    }

    /**
     * All games won.
     *
     * @return sum of the four counts
     */
    public long total() {
        return passes + single + gammon + backgammon;
    }
}
