package org.pipwright.engine.duel;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.pipwright.engine.features.Measures;
import org.pipwright.engine.match.PipLeader;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.match.RandomPlayer;
import org.pipwright.engine.position.Planes;

/**
 * Players that never change, to measure others against: {@code random}, {@code pips}, and four linear formulas. Their
 * weights are our own choice, round numbers set by hand once and then left alone: what counts is that they stay fixed.
 */
public final class Baselines {
    private static final Map<String, Supplier<Player>> BY_NAME = byName();

    private Baselines() {}

    private static Map<String, Supplier<Player>> byName() {
        Map<String, Supplier<Player>> all = new LinkedHashMap<>();
        all.put("random", RandomPlayer::new);
        all.put("pips", PipLeader::new);
        all.put("racer", () -> new FormulaPlayer(Baselines::racer));
        all.put("hitter", () -> new FormulaPlayer(Baselines::hitter));
        all.put("builder", () -> new FormulaPlayer(Baselines::builder));
        all.put("waiter", () -> new FormulaPlayer(Baselines::waiter));
        return all;
    }

    /**
     * Names of all baselines.
     *
     * @return {@code random}, {@code pips}, {@code racer}, {@code hitter}, {@code builder}, {@code waiter}
     */
    public static Set<String> names() {
        return Collections.unmodifiableSet(BY_NAME.keySet());
    }

    /**
     * The baseline of a name.
     *
     * @param name one of {@link #names()}
     * @return the entrant, or empty if there is none of that name
     */
    public static Optional<Entrant> named(String name) {
        return Optional.ofNullable(BY_NAME.get(name)).map(players -> Entrant.of(name, players));
    }

    /** Runs home and fears shots: the pip lead, 4 pips a checker borne off, less 0.6 pips a roll that hits. */
    static double racer(int[] planes, int me, int them) {
        return race(planes, me, them) - 0.6 * shots(planes, me, them);
    }

    /**
     * Attacks: 15 pips for each checker sent to the bar on top of its way, 6 for each closed home point, 0.2 less for each
     * roll that hits back; in a race it runs home.
     */
    static double hitter(int[] planes, int me, int them) {
        return race(planes, me, them)
                + 15 * Planes.count(planes, them, Planes.BAR)
                + 6 * heldPoints(planes, me, Planes.HOME)
                - 0.2 * shots(planes, me, them);
    }

    /**
     * Builds: while there is contact, 4 pips for each point held from the 4 to the 9 and for each anchor from the 18 to
     * the 22, 6 for each point in its longest prime, 8 for a checker on the bar, less 0.5 for each roll that hits and 3 for
     * each checker past the third on one point.
     */
    static double builder(int[] planes, int me, int them) {
        double race = race(planes, me, them);
        if (!Planes.contact(planes, me)) {
            return race;
        }
        return 0.5 * race
                + 4 * heldPoints(planes, me, 0x3F << 4)
                + 4 * heldPoints(planes, me, 0x1F << 18)
                + 6 * Measures.longestPrime(planes, me)
                + 8 * Planes.count(planes, them, Planes.BAR)
                - 0.5 * shots(planes, me, them)
                - 3 * pastThird(planes, me);
    }

    /**
     * Waits for a late shot and minds neither the race nor being hit: while there is contact, 10 for each of up to two
     * anchors in the other side's home board, 6 for each point in its longest prime, 4 for each point held from the 4 to
     * the 9, 8 for a checker on the bar, less 3 for each checker past the third on one point.
     */
    static double waiter(int[] planes, int me, int them) {
        if (!Planes.contact(planes, me)) {
            return race(planes, me, them);
        }
        return 10 * Math.min(2, heldPoints(planes, me, 0x3F << 19))
                + 6 * Measures.longestPrime(planes, me)
                + 4 * heldPoints(planes, me, 0x3F << 4)
                + 8 * Planes.count(planes, them, Planes.BAR)
                - 3 * pastThird(planes, me);
    }

    private static double race(int[] planes, int me, int them) {
        return Planes.pips(planes, them) - Planes.pips(planes, me) + 4.0 * Planes.count(planes, me, Planes.OFF);
    }

    private static int shots(int[] planes, int me, int them) {
        return Measures.hittingRolls(planes, them, me);
    }

    /** Checkers that lie on one point past the third there. */
    private static int pastThird(int[] planes, int side) {
        int stacked = (planes[side + 2] | planes[side + 3]) & Planes.POINTS;
        return Planes.checkers(planes, side, stacked) - 3 * Integer.bitCount(stacked);
    }

    private static int heldPoints(int[] planes, int side, int places) {
        return Integer.bitCount(Planes.held(planes, side) & places);
    }
}
