package org.pipwright.engine.cube;

/** What the endings of a game are worth to one side ("me"), in any unit of value that grows with its points. */
public interface Payoffs {
    /**
     * Worth of a game played to its end, averaged over single games, gammons and backgammons.
     *
     * @param won whether this side has won
     * @param cube the cube at the end; its owner as this side sees it
     * @return the value to this side
     */
    double played(boolean won, CubeState cube);

    /**
     * Worth of a pass.
     *
     * @param won whether the opponent has passed
     * @param cube value of the cube before the double
     * @return the value to this side
     */
    double passed(boolean won, int cube);

    /**
     * Whether doubling can still matter to either side.
     *
     * @param cube value of the cube before a double
     * @return false if no double at this value or a higher one can help anybody
     */
    boolean cubeMatters(int cube);
}
