package org.pipwright.engine.duel;

import java.io.Serializable;

/**
 * Games one side has won, by how they ended.
 *
 * @param passes games the other side has passed; none without the cube
 * @param single games played out for the value of the cube; with the Jacoby rule gammons with an unturned cube too
 * @param gammon games worth twice the cube
 * @param backgammon games worth three times the cube
 * @param points all they were worth; in a match also what went beyond its end
 */
public record Wins(long passes, long single, long gammon, long backgammon, long points) implements Serializable {
    /** No games yet. */
    public static final Wins NONE = new Wins(0, 0, 0, 0, 0);

    /**
     * One game without the cube more.
     *
     * @param worth points: 1, 2 or 3
     * @return the counts with it
     */
    public Wins plus(int worth) {
        return plus(false, worth, 1);
    }

    /** One game more, worth a multiple of the cube at the end, or of the cube before a double that was passed. */
    Wins plus(boolean passed, int worth, int cube) {
        int multiple = passed ? 0 : worth / cube;
        return new Wins(
                passes + (passed ? 1 : 0),
                single + (multiple == 1 ? 1 : 0),
                gammon + (multiple == 2 ? 1 : 0),
                backgammon + (multiple == 3 ? 1 : 0),
                points + worth);
    }

    /** Two sets of games put together. */
    Wins plus(Wins other) {
        return new Wins(
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
