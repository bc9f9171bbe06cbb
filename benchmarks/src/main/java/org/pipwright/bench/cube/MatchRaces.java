package org.pipwright.bench.cube;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.bearoff.TwoSidedTable;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.CubeWalk;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.WalkGame;
import org.pipwright.engine.matchtable.CubeUse;
import org.pipwright.engine.matchtable.MatchPayoffs;
import org.pipwright.engine.matchtable.MatchTable;
import org.pipwright.engine.matchtable.MatchTerms;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.score.MatchScore;

/** Races whose values at a score are exact: endings of at most six checkers a side, and pip races without waste. */
final class MatchRaces {
    private static final int ENDINGS = 3000;
    private static final int MAX_PIPS = 130;
    private static final double[] OF_ENDINGS = {12.5, 17.5, 22.5, 36};
    private static final double[] OF_RACES = {36, 50, 70, 90, 110, 130};

    /** One of so many pip races; they differ little from their neighbours. */
    private static final int ONE_OF = 4;

    private final TwoSidedTable table;
    private final long seed;
    private final MatchTable matches = ShippedMatchTable.load();

    MatchRaces(EndgameTables tables, long seed) {
        this.table = tables.twoSided();
        this.seed = seed;
    }

    /** Positions by kind, in random order. */
    Map<String, List<MatchKnown>> at(MatchScore score) {
        Map<String, List<MatchKnown>> kinds = new LinkedHashMap<>();
        prepare(kinds, "endings", OF_ENDINGS);
        prepare(kinds, "pip races", OF_RACES);
        MatchPayoffs payoffs = new MatchPayoffs(matches, score, GammonShares.NONE);
        Map<CubeWalk, WalkGame> walks = new LinkedHashMap<>();
        endings(score, payoffs, walks, kinds);
        races(score, payoffs, walks, kinds);
        return kinds;
    }

    private void endings(
            MatchScore score,
            MatchPayoffs payoffs,
            Map<CubeWalk, WalkGame> walks,
            Map<String, List<MatchKnown>> kinds) {
        MatchTerms terms = new MatchTerms(new MatchStakes(score), matches);
        SideIndex sides = table.index();
        SplittableRandom random = new SplittableRandom(seed);
        int[] planes = new int[Planes.STRIDE];
        for (int i = 0; i < ENDINGS; i++) {
            int mine = 1 + random.nextInt(sides.size() - 1);
            int theirs = 1 + random.nextInt(sides.size() - 1);
            sides.write(mine, planes, 0);
            sides.write(theirs, planes, Planes.SIDE);
            bearOffTheRest(planes, 0);
            bearOffTheRest(planes, Planes.SIDE);
            double win = table.value(mine, theirs).win();
            String kind = kind("endings", OF_ENDINGS, pips(planes));
            if (CubeFit.counts(win) && kind != null) {
                Position position = Position.ofPlanes(planes, 0);
                CubeValues values = terms.exact(position, CubeState.START).orElseThrow();
                double owned = terms.exact(position, MatchKnown.CUBES.get(2))
                        .orElseThrow()
                        .noDouble();
                double[] truth = {values.noDouble(), values.doubleTake(), owned};
                CubeUse use = CubeUse.of(planes, 0);
                kinds.get(kind).add(known(score, use, payoffs, win, truth, walks));
            }
        }
    }

    private void races(
            MatchScore score,
            MatchPayoffs payoffs,
            Map<CubeWalk, WalkGame> walks,
            Map<String, List<MatchKnown>> kinds) {
        MatchPipRace race = new MatchPipRace(MAX_PIPS, payoffs);
        SplittableRandom random = new SplittableRandom(~seed);
        for (int x = 1; x <= MAX_PIPS; x++) {
            for (int y = 1; y <= MAX_PIPS; y++) {
                double win = race.win(x, y);
                double pips = (x + y) / 2.0;
                String kind = kind("pip races", OF_RACES, pips);
                if (kind == null || !CubeFit.counts(win) || random.nextInt(ONE_OF) > 0) {
                    continue;
                }
                double[] truth = new double[MatchKnown.CUBES.size()];
                for (int k = 0; k < truth.length; k++) {
                    truth[k] = race.rolling(x, y, MatchKnown.CUBES.get(k));
                }
                kinds.get(kind).add(known(score, CubeUse.ofRace(pips), payoffs, win, truth, walks));
            }
        }
    }

    private static void bearOffTheRest(int[] planes, int at) {
        for (int k = Planes.checkers(planes, at, Planes.ON_BOARD); k < Position.FULL; k++) {
            Planes.add(planes, at, 0);
        }
    }

    private static double pips(int[] planes) {
        return (Planes.pips(planes, 0) + Planes.pips(planes, Planes.SIDE)) / 2.0;
    }

    private static void prepare(Map<String, List<MatchKnown>> kinds, String name, double[] edges) {
        for (int i = 1; i < edges.length; i++) {
            kinds.put(kind(name, edges, edges[i - 1]), new ArrayList<>());
        }
    }

    private static String kind(String name, double[] edges, double pips) {
        for (int i = 1; i < edges.length; i++) {
            if (pips >= edges[i - 1] && pips < edges[i]) {
                return name + ", " + edges[i - 1] + " to " + edges[i] + " pips";
            }
        }
        return null;
    }

    private static MatchKnown known(
            MatchScore score,
            CubeUse use,
            MatchPayoffs payoffs,
            double win,
            double[] truth,
            Map<CubeWalk, WalkGame> walks) {
        WalkGame walk = walks.computeIfAbsent(use.walk(), k -> new WalkGame(k, payoffs));
        return MatchKnown.of(score, use, payoffs, win, truth, new double[truth.length], walk);
    }
}
