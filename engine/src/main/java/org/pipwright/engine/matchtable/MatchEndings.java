package org.pipwright.engine.matchtable;

import java.nio.file.Path;
import java.util.BitSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.score.MatchScore;

/**
 * Exact chances to win a match in endings where the standard two-sided table has exact money values: at most six checkers a
 * side, all home, and no gammon possible. Exact as far as the match table is, by which both sides play, double, take and
 * pass for the match at every cube that can still arise. Nothing is computed before it is asked for: the pairs that can
 * follow on a question are solved together, and those of the scores asked about last are kept, those that take long in a
 * folder too, if there is one. Shared by threads.
 */
final class MatchEndings {
    private static final SideIndex SIDES = EndgameTables.LAST_SIX;

    /** Numbers kept in all, 256 MiB; a score has up to 10 million. */
    private static final long MAX = 1L << 26;

    private final MatchTable table;
    private final Map<MatchScore, EndingsAtScore> byScore = new LinkedHashMap<>(16, 0.75f, true);

    /** Where what takes long is kept for later runs; null for nowhere. */
    private volatile EndingFolder folder;

    /** Endings with the chances of a table after the game. */
    MatchEndings(MatchTable table) {
        this.table = table;
    }

    /** From now on, keeps what takes long in a folder, and looks there first. */
    void keepIn(Path path) {
        folder = new EndingFolder(path);
    }

    private static boolean covers(Position position, CubeState cube) {
        return covers(position) && (cube.value() == 1 || cube.owner() != CubeOwner.CENTRE);
    }

    private static boolean covers(Position position) {
        // Cheap where most positions end, since this is asked for every position of a game.
        if (position.borneOff() == 0 || position.opponentBorneOff() == 0) {
            return false;
        }
        int[] planes = position.toPlanes();
        return SIDES.covers(planes, 0) && SIDES.covers(planes, Planes.SIDE);
    }

    /**
     * Solves together what can follow on any of some positions, which takes less time than one after the other.
     *
     * @param positions where the plays of one roll lead; those that are not covered are left out
     * @param score the score, seen from the side on roll
     */
    void expect(List<Position> positions, MatchScore score) {
        boolean firstOnRoll = score.mine() <= score.theirs();
        BitSet firsts = new BitSet();
        BitSet seconds = new BitSet();
        for (Position position : positions) {
            int[] planes = position.toPlanes();
            if (covers(position) && Planes.pips(planes, 0) > 0 && Planes.pips(planes, Planes.SIDE) > 0) {
                firsts.set(SIDES.of(planes, firstOnRoll ? 0 : Planes.SIDE));
                seconds.set(SIDES.of(planes, firstOnRoll ? Planes.SIDE : 0));
            }
        }
        if (!firsts.isEmpty()) {
            ask(at(firstOnRoll ? score : score.swapped()), endings -> {
                endings.expect(firsts, seconds, firstOnRoll);
                return null;
            });
        }
    }

    /**
     * The values of the cube actions.
     *
     * @param position an unfinished position
     * @param cube the cube, seen from the side on roll
     * @param stakes the score, seen from that side
     * @return chances of that side to win the match; empty if the position is not covered
     */
    Optional<CubeValues> values(Position position, CubeState cube, MatchStakes stakes) {
        if (!covers(position, cube)) {
            return Optional.empty();
        }
        Asked asked = new Asked(position, cube, stakes.score());
        double[] lanes = asked.rolling();
        boolean mayDouble = stakes.mayDouble(cube);
        double roll = asked.value(lanes, cube);
        double take = mayDouble ? asked.value(lanes, cube.taken()) : roll;
        double pass = table.chanceAfter(stakes.score(), cube.value());
        return Optional.of(new CubeValues(mayDouble, false, roll, take, pass, take));
    }

    /** The value with the right cube action; empty if the position is not covered. */
    OptionalDouble best(Position position, CubeState cube, MatchStakes stakes) {
        if (!covers(position, cube)) {
            return OptionalDouble.empty();
        }
        Asked asked = new Asked(position, cube, stakes.score());
        return OptionalDouble.of(asked.value(asked.best(), cube));
    }

    /** A question, seen from the side that needs fewer points, so that the two views of a score share what is solved. */
    private final class Asked {
        private final boolean firstOnRoll;
        private final int first;
        private final int second;
        private final EndingsAtScore endings;

        Asked(Position position, CubeState cube, MatchScore score) {
            int[] planes = position.toPlanes();
            firstOnRoll = score.mine() <= score.theirs();
            first = SIDES.of(planes, firstOnRoll ? 0 : Planes.SIDE);
            second = SIDES.of(planes, firstOnRoll ? Planes.SIDE : 0);
            endings = at(firstOnRoll ? score : score.swapped());
        }

        double[] best() {
            return ask(endings, at -> at.best(first, second, firstOnRoll));
        }

        double[] rolling() {
            return ask(endings, at -> at.rolling(first, second, firstOnRoll));
        }

        /** To the side on roll, of a cube seen from it. */
        double value(double[] lanes, CubeState cube) {
            return firstOnRoll
                    ? endings.cubes().value(lanes, cube)
                    : 1 - endings.cubes().value(lanes, cube.swapped());
        }
    }

    private synchronized EndingsAtScore at(MatchScore score) {
        return byScore.computeIfAbsent(score, key -> {
            EndingCubes cubes = new EndingCubes(key, table);
            EndingFolder keeping = folder;
            return keeping == null
                    ? new EndingsAtScore(EndingPlays.ALL, cubes)
                    : new EndingsAtScore(EndingPlays.ALL, cubes, keeping);
        });
    }

    private <T> T ask(EndingsAtScore endings, Function<EndingsAtScore, T> question) {
        long before = endings.size();
        T answer = question.apply(endings);
        if (endings.size() != before) {
            trim(endings);
        }
        EndingFolder keeping = folder;
        if (keeping != null && endings.worthKeeping()) {
            keeping.keep(endings);
        }
        return answer;
    }

    /** Numbers held. */
    synchronized long size() {
        return byScore.values().stream().mapToLong(EndingsAtScore::size).sum();
    }

    /** Drops the scores not asked about for longest while there is too much; the one that has just grown stays. */
    private synchronized void trim(EndingsAtScore grown) {
        long size = size();
        Iterator<EndingsAtScore> eldest = byScore.values().iterator();
        while (size > MAX && eldest.hasNext()) {
            EndingsAtScore endings = eldest.next();
            if (endings != grown) {
                size -= endings.size();
                eldest.remove();
            }
        }
    }
}
