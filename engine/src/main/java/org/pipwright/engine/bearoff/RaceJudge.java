package org.pipwright.engine.bearoff;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/**
 * Outlooks of races, one after another. What long races need is simulated side by side up to the table
 * ({@link SideSimulation}) and kept for a while, since the plays of a roll leave the other side as it is. The same
 * position has the same outlook each time. Serves one thread; the tables may be shared.
 */
public final class RaceJudge {
    /** Sides that are kept; one takes up to 12 kB. */
    private static final int KEPT = 256;

    /** Smaller chances to lose a gammon are not worth another simulation. */
    private static final double NOTICED = 1e-4;

    private final EndgameTables tables;
    private final RaceChances chances;
    private final DecidedRaces decided = new DecidedRaces();
    private SideSimulation simulation;

    private final Map<List<Integer>, Side> sides = new LinkedHashMap<>(KEPT, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<List<Integer>, Side> eldest) {
            return size() > KEPT;
        }
    };

    /**
     * A judge of races.
     *
     * @param tables what is known
     */
    public RaceJudge(EndgameTables tables) {
        this.tables = tables;
        this.chances = new RaceChances(tables);
    }

    /** One side, and what has been found out about it. */
    private final class Side {
        final int[] planes;
        final SideOutlook usual;
        RollSpread first;
        RollSpread away;

        Side(int[] planes) {
            this.planes = planes;
            this.usual = simulation.outlook(planes, 0);
        }

        /**
         * The outlook of the side playing to save the gammon or the backgammon where it is in danger: as with the table,
         * it is taken to play for each number of rolls as if it were the only one.
         *
         * @param lost chance that the winner needs less than so many rolls
         */
        SideOutlook saving(ToDoubleFunction<RollSpread> lost) {
            if (usual.basis() != Basis.SIMULATED
                    || usual.first().most() == 0
                    || lost.applyAsDouble(usual.first()) <= NOTICED) {
                return usual;
            }
            first = first == null ? simulation.hurriedFirst(planes, 0) : first;
            if (usual.away().most() == 0 || lost.applyAsDouble(usual.away()) <= NOTICED) {
                return new SideOutlook(usual.basis(), usual.off(), usual.error(), first, usual.away());
            }
            away = away == null ? simulation.hurriedAway(planes, 0) : away;
            return new SideOutlook(usual.basis(), usual.off(), usual.error(), first, away);
        }
    }

    /**
     * The outlook of a race.
     *
     * @param position an unfinished position without contact
     * @return the outlook
     * @throws IllegalArgumentException if there is contact or the game is over
     */
    public RaceOutlook outlook(Position position) {
        if (position.contact() || position.finished()) {
            throw new IllegalArgumentException("only an unfinished position without contact is a race");
        }
        if (simulation == null) {
            simulation = new SideSimulation(tables.oneSided());
        }
        int[] planes = position.toPlanes();
        Side onRoll = side(planes, 0);
        Side opponent = side(planes, Planes.SIDE);
        Basis basis = tables.basis(planes, 0);
        if (basis != Basis.EXACT && ShortRaces.covers(planes, 0)) {
            double win = ShortRaces.win(planes, 0);
            return new RaceOutlook(Basis.EXACT, new Outcomes(win, 0, 0, 1 - win, 0, 0), onRoll.usual, opponent.usual);
        }
        if (basis == Basis.ESTIMATED) {
            Optional<Outcomes> known = decided.chances(planes, onRoll.usual, opponent.usual);
            if (known.isPresent()) {
                return new RaceOutlook(Basis.EXACT, known.get(), onRoll.usual, opponent.usual);
            }
            SideOutlook mine = onRoll.saving(opponent.usual.off()::lessThan);
            SideOutlook theirs = opponent.saving(onRoll.usual.off()::atMost);
            // Tables of few checkers may know both sides: then nothing was simulated.
            Basis found = mine.basis() == theirs.basis() ? mine.basis() : Basis.SIMULATED;
            return new RaceOutlook(found, combine(mine, theirs), mine, theirs);
        }
        float[] six = new float[Outcomes.COUNT];
        chances.write(basis, planes, 0, six, 0);
        return new RaceOutlook(basis, Outcomes.of(six, 0), onRoll.usual, opponent.usual);
    }

    private Side side(int[] planes, int at) {
        List<Integer> key = List.of(planes[at], planes[at + 1], planes[at + 2], planes[at + 3]);
        return sides.computeIfAbsent(key, k -> new Side(Arrays.copyOfRange(planes, at, at + Planes.SIDE)));
    }

    /**
     * The chances from two outlooks: who is off first wins, a gammon if the loser has borne off none, a backgammon if it
     * has a checker in the winner's home. The numbers of the two sides are independent, those of one side are taken so.
     */
    private static Outcomes combine(SideOutlook onRoll, SideOutlook opponent) {
        double win = onRoll.off().atMost(opponent.off());
        double winGammon = Math.min(win, onRoll.off().atMost(opponent.first()));
        double winBackgammon = Math.min(winGammon, onRoll.off().atMost(opponent.away()));
        double lose = 1 - win;
        double loseGammon = Math.min(lose, opponent.off().lessThan(onRoll.first()));
        double loseBackgammon = Math.min(loseGammon, opponent.off().lessThan(onRoll.away()));
        return new Outcomes(
                win - winGammon,
                winGammon - winBackgammon,
                winBackgammon,
                lose - loseGammon,
                loseGammon - loseBackgammon,
                loseBackgammon);
    }
}
