package org.pipwright.engine.explain;

import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.measures.Crossovers;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Step;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/**
 * What a play does to the board, seen from the side that plays; points are counted from its home.
 *
 * @param play the play
 * @param stage the stage of the game before it
 * @param before the board before it
 * @param after the board after it
 * @param made points it makes: held after it and not before, from low to high
 * @param broken points it gives up: held before it and not after
 * @param hits checkers it hits
 * @param borneOff checkers it bears off
 * @param exposure what the opponent's next roll can do
 * @param newPoints with how many of its next 36 throws the side could hold one more of the points 3 to 7 and 18 to 22, if
 *     the opponent left the board as it is; 0 without contact
 * @param plans what both sides have before them
 * @param crossovers crossovers the side needs to bear everything off
 */
public record PlayFacts(
        Play play,
        Stage stage,
        BoardFacts before,
        BoardFacts after,
        List<Integer> made,
        List<Integer> broken,
        int hits,
        int borneOff,
        Exposure exposure,
        int newPoints,
        Plans plans,
        int crossovers) {
    /** Points from here on are in the opponent's home: a made one is an anchor. */
    private static final int ANCHORS = 19;

    private static final int HOME = 6;

    /**
     * Keeps the lists.
     *
     * @param play the play
     * @param stage the stage of the game before it
     * @param before the board before it
     * @param after the board after it
     * @param made points it makes
     * @param broken points it gives up
     * @param hits checkers it hits
     * @param borneOff checkers it bears off
     * @param exposure what the opponent's next roll can do
     * @param newPoints throws that make one more good point
     * @param plans what both sides have before them
     * @param crossovers to bear everything off
     */
    public PlayFacts {
        made = List.copyOf(made);
        broken = List.copyOf(broken);
    }

    /**
     * The facts of a play.
     *
     * @param position the position before it
     * @param play a play of it
     * @return the facts
     */
    public static PlayFacts of(Position position, Play play) {
        BoardFacts before = BoardFacts.of(position);
        BoardFacts after = BoardFacts.of(play.result());
        Stage stage = Stage.of(position);
        return new PlayFacts(
                play,
                stage,
                before,
                after,
                without(after.mine().made(), before.mine().made()),
                without(before.mine().made(), after.mine().made()),
                (int) play.steps().stream().filter(Step::hit).count(),
                (int) play.steps().stream()
                        .filter(step -> step.to() == Planes.OFF)
                        .count(),
                Exposure.of(play.next()),
                after.contact() ? Prospects.newPoints(play.result()) : 0,
                Plans.of(play.result(), play.next(), stage),
                Crossovers.of(play.result().toPlanes(), 0).off());
    }

    private static List<Integer> without(List<Integer> points, List<Integer> others) {
        return points.stream().filter(point -> !others.contains(point)).collect(Collectors.toList());
    }

    /**
     * Pips the opponent has lost by hits.
     *
     * @return 0 if nothing was hit
     */
    public int pipsTaken() {
        return after.theirPips() - before.theirPips();
    }

    /**
     * Pips to bring all checkers home: before that none is borne off, and until one is a gammon can be lost.
     *
     * @return pips beyond the 6 point, at least 0
     */
    public int toHome() {
        int[] planes = play.result().toPlanes();
        int pips = 0;
        for (int point = HOME + 1; point <= Planes.BAR; point++) {
            pips += (point - HOME) * Planes.count(planes, 0, point);
        }
        return pips;
    }

    /**
     * Whether a point is one that {@link #newPoints} counts.
     *
     * @param point counted from the home of the side that plays
     * @return true from 3 to 7 and from 18 to 22
     */
    public static boolean good(int point) {
        return Prospects.wanted(point);
    }

    /**
     * Whether a point would be an anchor.
     *
     * @param point counted from the home of the side that plays
     * @return true in the opponent's home
     */
    public static boolean anchor(int point) {
        return point >= ANCHORS;
    }
}
