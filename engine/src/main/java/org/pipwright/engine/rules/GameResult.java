package org.pipwright.engine.rules;

import org.pipwright.engine.PublicApi;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/** How much a finished game is worth before the cube: single, gammon or backgammon. */
@PublicApi
public enum GameResult {
    /** The loser has borne off a checker: 1 point. */
    SINGLE(1),
    /** The loser has borne off none: 2 points. */
    GAMMON(2),
    /** The loser has borne off none and has a checker on the bar or in the winner's home: 3 points. */
    BACKGAMMON(3);

    /** The loser's own points 19 to 24, which are the winner's home, and the bar. */
    private static final int IN_WINNERS_HOME = 0x3F << 19 | 1 << Planes.BAR;

    private final int points;

    GameResult(int points) {
        this.points = points;
    }

    /**
     * Points with the cube at 1.
     *
     * @return 1, 2 or 3
     */
    public int points() {
        return points;
    }

    /**
     * Points with a cube.
     *
     * @param cube value of the cube, a power of two, at least 1
     * @return points times cube
     */
    public int points(int cube) {
        if (cube < 1 || Integer.bitCount(cube) != 1) {
            throw new IllegalArgumentException("the cube shows a power of two from 1 up, not " + cube);
        }
        return Math.multiplyExact(points, cube);
    }

    /**
     * What the loser of a game loses.
     *
     * @param planes array that holds the loser's side
     * @param loserAt index of the loser's plane 0
     * @return the result of the game
     */
    public static GameResult of(int[] planes, int loserAt) {
        int occupied = Planes.occupied(planes, loserAt);
        if ((occupied & 1) != 0) {
            return SINGLE;
        }
        return (occupied & IN_WINNERS_HOME) != 0 ? BACKGAMMON : GAMMON;
    }

    /**
     * What the loser of a finished game loses.
     *
     * @param position a finished position
     * @return the result of the game, whichever side has won
     * @throws IllegalArgumentException if neither side has borne off all of its checkers
     */
    public static GameResult of(Position position) {
        if (!position.finished()) {
            throw new IllegalArgumentException("the game is not finished");
        }
        boolean iWon = position.borneOff() == position.checkers();
        return of(position.toPlanes(), iWon ? Planes.SIDE : 0);
    }
}
