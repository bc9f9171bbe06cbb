package org.pipwright.engine.explain;

import java.util.function.ToDoubleFunction;
import org.pipwright.engine.measures.Structure;

/**
 * A number of a board after a play, for the side that has played, by which plays are compared. More of it is better if its
 * sign says so (common practice, no source); how much it counts is fitted (see {@link TraitWeights}).
 */
public enum Trait {
    /** Pips that the opponent's next roll takes on average. */
    RISK(Motive.SHOTS, -1, facts -> facts.exposure().risk()),
    /** The same, weighted by the points of the opponent's home that keep a checker on the bar. */
    RISK_AT_BOARD(
            Motive.SHOTS,
            -1,
            facts -> facts.exposure().risk() * home(facts.after().theirs())),
    /** Throws with costly hits. */
    SHOTS(Motive.SHOTS, -1, facts -> facts.exposure().costly()),
    /** The same, weighted in the same way. */
    SHOTS_AT_BOARD(
            Motive.SHOTS,
            -1,
            facts -> facts.exposure().costly() * home(facts.after().theirs())),
    /** Points 4 to 6. */
    INNER(Motive.POINT, 1, facts -> held(facts.after().mine(), 4, 6)),
    /** The bar point. */
    BAR_POINT(Motive.POINT, 1, facts -> held(facts.after().mine(), 7, 7)),
    /** Points 2 and 3. */
    LOW(Motive.POINT, 1, facts -> held(facts.after().mine(), 2, 3)),
    /** Points 8 to 11. */
    OUTER(Motive.POINT, 1, facts -> held(facts.after().mine(), 8, 11)),
    /** Points 12 to 17. */
    FAR(Motive.POINT, 1, facts -> held(facts.after().mine(), 12, 17)),
    /** Points of the home, for each checker of the opponent's on the bar. */
    POINTS_AT_BAR(
            Motive.POINT,
            1,
            facts -> held(facts.after().mine(), 1, 6)
                    * Math.min(2, facts.after().theirs().onBar())),
    /** An anchor from the opponent's 3 to its bar point. */
    HIGH_ANCHOR(Motive.ANCHOR, 1, facts -> any(facts.after().mine(), 18, 22)),
    /** An anchor on the opponent's 4 or 5 point, which count as the best ones. */
    BEST_ANCHOR(Motive.ANCHOR, 1, facts -> any(facts.after().mine(), 20, 21)),
    /** An anchor on the opponent's 1 or 2 point and no better one. */
    DEEP_ANCHOR(
            Motive.ANCHOR,
            1,
            facts -> Math.max(
                    0, any(facts.after().mine(), 23, 24) - any(facts.after().mine(), 18, 22))),
    /** Any anchor, weighted by the opponent's home. */
    ANCHOR_AT_BOARD(
            Motive.ANCHOR,
            1,
            facts -> any(facts.after().mine(), 18, 24) * home(facts.after().theirs())),
    /** The opponent's checkers on the bar. */
    ON_BAR(Motive.HIT, 1, facts -> Math.min(2, facts.after().theirs().onBar())),
    /** Pips the opponent has lost by hits. */
    TAKEN(Motive.HIT, 1, PlayFacts::pipsTaken),
    /** Throws with which the opponent cannot bring all its checkers in. */
    STAYS_OUT(Motive.ENTRY, 1, facts -> 36 - facts.plans().entry().enters()),
    /** Throws with which the opponent moves nothing. */
    IDLE(Motive.ENTRY, 1, facts -> facts.exposure().idle()),
    /** Length of the row beyond two points, if something is behind it. */
    ROW(Motive.PRIME, 1, facts -> Math.max(0, facts.after().prime().length() - 2)),
    /** Length beyond three times the checkers behind it, four at most. */
    ROW_TRAPS(
            Motive.PRIME,
            1,
            facts -> Math.max(0, facts.after().prime().length() - 3)
                    * Math.min(4, facts.after().prime().trapped())),
    /** Throws that get none of the opponent's checkers past the row. */
    HELD_BACK(Motive.PRIME, 1, facts -> 36 - facts.plans().theirEscape().escapes()),
    /** Checkers in the opponent's home or on the bar. */
    BACK(Motive.ESCAPE, -1, facts -> facts.after().mine().checkersBack()),
    /** The same, weighted by the length of the opponent's row. */
    BACK_BLOCKED(
            Motive.ESCAPE,
            -1,
            facts -> facts.after().mine().checkersBack()
                    * Math.max(0, facts.after().theirPrime().length() - 2)),
    /** Own throws that get none of the checkers behind past the opponent's row. */
    STUCK(Motive.ESCAPE, -1, facts -> 36 - facts.plans().escape().escapes()),
    /** Own throws that make another good point. */
    NEW_POINTS(Motive.BUILDERS, 1, PlayFacts::newPoints),
    /** Spare pips up to what a side plays in four rolls. */
    SPARE(Motive.TIMING, 1, facts -> Math.min(32, facts.plans().spread().spare())),
    /** The same, if the opponent has at least four points in a row against it. */
    SPARE_BLOCKED(
            Motive.TIMING,
            1,
            facts -> facts.after().theirPrime().length() < 4
                    ? 0
                    : Math.min(32, facts.plans().spread().spare())),
    /** Own throws that leave a shot next time. */
    NEXT(Motive.NEXT_SHOTS, -1, facts -> facts.plans().nextShots()),
    /** The opponent's throws that leave a shot. */
    THEIR_NEXT(Motive.WAITING, 1, facts -> facts.plans().theirNextShots()),
    /** Checkers beyond the third of a point. */
    STACKED(Motive.SPREAD, -1, facts -> facts.plans().spread().stacked()),
    /** Checkers on the 1 and 2 points. */
    BURIED(Motive.SPREAD, -1, facts -> facts.plans().spread().buried()),
    /** Points of the home without a checker, when it comes to bringing home and bearing off. */
    GAPS(
            Motive.SPREAD,
            -1,
            facts -> facts.stage() == Stage.CONTACT ? 0 : facts.plans().spread().gaps()),
    /** Blots in the home, if the opponent is on the bar or has a blot that a number of this side hits. */
    HOME_BLOTS(
            Motive.HOME_BLOTS,
            -1,
            facts -> returnShot(facts) ? facts.plans().spread().homeBlots() : 0),
    /** The same, for each checker of the opponent's on the bar. */
    HOME_BLOTS_AT_BAR(
            Motive.HOME_BLOTS,
            -1,
            facts -> facts.plans().spread().homeBlots()
                    * Math.min(2, facts.after().theirs().onBar())),
    /** Numbers of a die that do something for the opponent. */
    THEIR_NUMBERS(Motive.NUMBERS, -1, facts -> facts.plans().theirNumbers().good()),
    /** Numbers of a die that cover something. */
    MY_NUMBERS(Motive.BUILDERS, 1, facts -> facts.plans().numbers().good()),
    /** Checkers borne off. */
    OFF(Motive.OFF, 1, PlayFacts::borneOff),
    /** Crossovers to bear everything off. */
    CROSSOVERS(Motive.OFF, -1, facts -> facts.crossovers()),
    /** Pip count of the side that has played. */
    PIPS(Motive.RACE, -1, facts -> facts.after().pips());

    private final Motive motive;
    private final int sign;
    private final ToDoubleFunction<PlayFacts> measure;

    Trait(Motive motive, int sign, ToDoubleFunction<PlayFacts> measure) {
        this.motive = motive;
        this.sign = sign;
        this.measure = measure;
    }

    /**
     * The kind of fact it belongs to.
     *
     * @return the motive
     */
    public Motive motive() {
        return motive;
    }

    /**
     * Whether more of it is better.
     *
     * @return 1 or -1
     */
    public int sign() {
        return sign;
    }

    /**
     * Whether it counts in a stage: in a race, points and what goes with contact do not.
     *
     * @param stage the stage
     * @return true if it does
     */
    public boolean counts(Stage stage) {
        return stage != Stage.RACE || motive == Motive.SPREAD || motive == Motive.OFF || motive == Motive.RACE;
    }

    /**
     * The number of a play.
     *
     * @param facts facts about the play
     * @return the number, in the trait's own unit
     */
    public double of(PlayFacts facts) {
        return measure.applyAsDouble(facts);
    }

    private static boolean returnShot(PlayFacts facts) {
        return facts.after().theirs().onBar() > 0 || facts.plans().numbers().hitting() != 0;
    }

    private static int home(Structure side) {
        return held(side, 1, 6);
    }

    private static int held(Structure side, int from, int to) {
        return (int) side.made().stream()
                .filter(point -> point >= from && point <= to)
                .count();
    }

    private static int any(Structure side, int from, int to) {
        return Math.min(1, held(side, from, to));
    }
}
