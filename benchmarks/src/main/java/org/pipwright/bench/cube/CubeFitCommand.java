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
@Command(name = "cube-fit", description = "Fits cube efficiencies to bear-offs, pip races and the fair walk.")
public final class CubeFitCommand extends BenchCommand {
    private static final int PAIRS = 200_000;

    private static final int MAX_PIPS = 130;

    @Option(
            names = "--steps",
            paramLabel = "N",
            required = true,
            description = "Steps of the walk on 50 cells for each roll, as in the header of the match table.")
    @Within(min = 1, max = 2500)
    private int steps;

    @Option(
            names = "--gammons",
            paramLabel = "SHARE",
            required = true,
            description = "Share of gammons, as in the header of the match table.")
    private double gammons;

    @Override
    protected void run() {
        SideIndex sides = new SideIndex(6, 7);
        List<List<CubeFit.Known>> bearOffs = bearOffs(TwoSidedTable.build(sides, 2, TableProgress.NONE));
        for (int bin = 0; bin < bearOffs.size(); bin++) {
            print("bear-off, mean pips " + 5 * bin + " to " + (5 * bin + 5), bearOffs.get(bin));
        }
        PipRace race = new PipRace(MAX_PIPS);
        for (int pips = 20; pips < MAX_PIPS; pips += 20) {
            print("pip race, mean pips " + pips + " to " + (pips + 20), races(race, pips, pips + 20));
        }
        GammonShares shares = new GammonShares(gammons, 0, gammons, 0);
        print("walk", walk(new CubeWalk(50, steps), shares));
    }

    private void print(String name, List<CubeFit.Known> positions) {
        if (positions.size() < 100 && !name.equals("walk")) {
            return;
        }
        CubeFit fit = new CubeFit();
        positions.forEach(fit::add);
        out().println(name + "\n  fitted  " + line(fit.best(), positions));
        CubeEfficiency best = CubeEfficiency.constant(0);
        for (int percent = 5; percent <= 100; percent += 5) {
            CubeEfficiency single = CubeEfficiency.constant(percent / 100.0);
            best = errors(single, positions).squares() < errors(best, positions).squares() ? single : best;
        }
        out().println("  single  " + line(best, positions));
    }

    private static String line(CubeEfficiency efficiency, List<CubeFit.Known> positions) {
        return CubeFit.name(efficiency) + "  " + errors(efficiency, positions);
    }

    private static CubeFit.Errors errors(CubeEfficiency efficiency, List<CubeFit.Known> positions) {
        CubeFit.Errors errors = new CubeFit.Errors();
        positions.forEach(known -> errors.add(known, efficiency));
        return errors;
    }

    /** Random pairs of arrangements, all equally likely, by mean pips. */
    private static List<List<CubeFit.Known>> bearOffs(TwoSidedTable table) {
        List<List<CubeFit.Known>> bins = new ArrayList<>();
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
                        .add(new CubeFit.Known(
                                GammonShares.NONE,
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

    private static List<CubeFit.Known> races(PipRace race, int from, int to) {
        List<CubeFit.Known> positions = new ArrayList<>();
        for (int x = 1; x <= MAX_PIPS; x++) {
            for (int y = 1; y <= MAX_PIPS; y++) {
                boolean inBin = x + y >= 2 * from && x + y < 2 * to;
                if (inBin && CubeFit.counts(race.win(x, y))) {
                    positions.add(
                            new CubeFit.Known(GammonShares.NONE, race.win(x, y), race.centred(x, y), race.owned(x, y)));
                }
            }
        }
        return positions;
    }

    private static List<CubeFit.Known> walk(CubeWalk walk, GammonShares shares) {
        WalkGame game = new WalkGame(walk, new WalkMoney(shares));
        CubeState owned = new CubeState(2, CubeOwner.ME);
        List<CubeFit.Known> positions = new ArrayList<>();
        for (int i = 0; i <= walk.cells(); i++) {
            double win = (double) i / walk.cells();
            if (CubeFit.counts(win)) {
                double take = game.doubleTake(CubeState.START, win);
                positions.add(new CubeFit.Known(
                        shares,
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
