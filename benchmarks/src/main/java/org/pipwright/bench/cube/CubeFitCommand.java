package org.pipwright.bench.cube;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.Within;
import org.pipwright.engine.bearoff.DoublingValue;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.bearoff.TableProgress;
import org.pipwright.engine.bearoff.TwoSidedTable;
import org.pipwright.engine.cube.CubeEfficiency;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.CubeWalk;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.Payoffs;
import org.pipwright.engine.cube.WalkGame;
import org.pipwright.engine.measures.PipRace;
import org.pipwright.engine.position.Planes;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/**
 * Fits cube efficiencies by regime and prints how far the model stays from the values it was fitted to, beside the best
 * single value: exact bear-offs of up to seven checkers a side, the pip race, and the fair walk.
 */
@Command(name = "cube-fit", description = "Cube efficiencies of bear-offs, pip races and the fair walk.")
public final class CubeFitCommand extends BenchCommand {
    private static final int PAIRS = 200_000;

    private static final int MAX_PIPS = 130;

    /** A position with its true values. */
    private record Known(double win, CubeValues centred, CubeValues owned) {}

    @Option(
            names = "--steps",
            paramLabel = "N",
            required = true,
            description = "Steps a roll of the walk on 50 cells, as in the head of the match table.")
    @Within(min = 1, max = 2500)
    private int steps;

    @Option(
            names = "--gammons",
            paramLabel = "SHARE",
            required = true,
            description = "Share of gammons, as in the head of the match table.")
    private double gammons;

    @Override
    protected void run() {
        SideIndex sides = new SideIndex(6, 7);
        List<List<Known>> bearOffs = bearOffs(TwoSidedTable.build(sides, 2, TableProgress.NONE));
        for (int bin = 0; bin < bearOffs.size(); bin++) {
            print("bear-off, mean pips " + 5 * bin + " to " + (5 * bin + 5), bearOffs.get(bin), GammonShares.NONE);
        }
        PipRace race = new PipRace(MAX_PIPS);
        for (int pips = 20; pips < MAX_PIPS; pips += 20) {
            print(
                    "pip race, mean pips " + pips + " to " + (pips + 20),
                    races(race, pips, pips + 20),
                    GammonShares.NONE);
        }
        GammonShares shares = new GammonShares(gammons, 0, gammons, 0);
        print("walk", walk(new CubeWalk(50, steps), shares), shares);
    }

    private void print(String name, List<Known> positions, GammonShares shares) {
        if (positions.size() < 100 && !name.equals("walk")) {
            return;
        }
        CubeFit fit = new CubeFit(shares);
        positions.forEach(known -> fit.add(known.win, known.centred, known.owned));
        CubeFit.Errors fitted = fit.new Errors(fit.best());
        positions.forEach(known -> fitted.add(known.win, known.centred, known.owned));
        out().println(name + "\n  fitted  " + fitted);
        CubeFit.Errors best = null;
        double least = Double.POSITIVE_INFINITY;
        for (int percent = 0; percent <= 100; percent += 5) {
            CubeFit.Errors single = fit.new Errors(CubeEfficiency.constant(percent / 100.0));
            positions.forEach(known -> single.add(known.win, known.centred, known.owned));
            if (single.squares() < least) {
                least = single.squares();
                best = single;
            }
        }
        out().println("  single  " + best);
    }

    /** Random pairs of arrangements, all equally likely, by mean pips. */
    private static List<List<Known>> bearOffs(TwoSidedTable table) {
        List<List<Known>> bins = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            bins.add(new ArrayList<>());
        }
        SplittableRandom random = new SplittableRandom(1);
        int sides = table.index().size();
        for (int i = 0; i < PAIRS; i++) {
            int mine = 1 + random.nextInt(sides - 1);
            int theirs = 1 + random.nextInt(sides - 1);
            double win = table.value(mine, theirs).win();
            if (CubeFit.counts(win)) {
                DoublingValue exact = table.doubling(mine, theirs);
                double take = exact.doubleTake();
                int bin = (pips(table, mine) + pips(table, theirs)) / 10;
                bins.get(Math.min(bin, 8))
                        .add(new Known(
                                win,
                                new CubeValues(true, false, exact.noDoubleCentred(), take, 1, take),
                                new CubeValues(true, false, exact.noDoubleMine(), take, 1, take)));
            }
        }
        return bins;
    }

    private static int pips(TwoSidedTable table, int side) {
        int[] planes = new int[Planes.STRIDE];
        table.index().write(side, planes, 0);
        return Planes.pips(planes, 0);
    }

    private static List<Known> races(PipRace race, int from, int to) {
        List<Known> positions = new ArrayList<>();
        for (int x = 1; x <= MAX_PIPS; x++) {
            for (int y = 1; y <= MAX_PIPS; y++) {
                boolean inBin = x + y >= 2 * from && x + y < 2 * to;
                if (inBin && CubeFit.counts(race.win(x, y))) {
                    positions.add(new Known(race.win(x, y), race.centred(x, y), race.owned(x, y)));
                }
            }
        }
        return positions;
    }

    private static List<Known> walk(CubeWalk walk, GammonShares shares) {
        WalkGame game = new WalkGame(walk, new WalkMoney(shares));
        CubeState owned = new CubeState(2, CubeOwner.ME);
        List<Known> positions = new ArrayList<>();
        for (int i = 0; i <= walk.cells(); i++) {
            double win = (double) i / walk.cells();
            if (CubeFit.counts(win)) {
                double take = game.doubleTake(CubeState.START, win);
                positions.add(new Known(
                        win,
                        new CubeValues(true, false, game.rolling(CubeState.START, true, win), take, 1, take),
                        new CubeValues(true, false, game.rolling(owned, true, win) / 2, take, 1, take)));
            }
        }
        return positions;
    }

    /** Money without the Jacoby rule; cubes beyond 4096 are dead, which is felt nowhere near 1. */
    private record WalkMoney(GammonShares shares) implements Payoffs {
        @Override
        public double played(boolean won, CubeState cube) {
            return cube.value() * (won ? shares.winValue() : -shares.loseValue());
        }

        @Override
        public double passed(boolean won, int cube) {
            return won ? cube : -cube;
        }

        @Override
        public boolean cubeMatters(int cube) {
            return cube <= 4096;
        }
    }
}
