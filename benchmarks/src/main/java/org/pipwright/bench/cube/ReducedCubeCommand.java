package org.pipwright.bench.cube;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.ThreadsOption;
import org.pipwright.bench.Within;
import org.pipwright.engine.cube.CubeEfficiency;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.EfficiencyByRegime;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.reduced.ReducedCube;
import org.pipwright.engine.reduced.ReducedGame;
import org.pipwright.engine.reduced.ReducedOutcomes;
import org.pipwright.engine.reduced.ReducedSolver;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/**
 * Holds the cube model against a reduced game that is solved with the cube: its exact chances go in, its values and
 * decisions are compared with exact ones, with contact and in races apart. An efficiency is fitted on every other position
 * and scored on the rest, beside the shipped one.
 */
@Command(name = "reduced-cube", description = "Regret of the cube model in a game that is solved with the cube.")
public final class ReducedCubeCommand extends BenchCommand {
    /** Changes of sweeps, in points per unit of the cube: far below what the model is off. */
    private static final double SETTLED = 1e-7;

    private static final double SOLVED = 1e-7;

    /** Most positions of a kind, drawn at random where there are more. */
    private static final int MAX_POSITIONS = 200_000;

    /** A position with its true values. */
    private record Known(CubeFit.Known values, CubeEfficiency shipped) {}

    @Option(
            names = "--checkers",
            paramLabel = "N",
            defaultValue = "2",
            description = "Checkers a side, 1 to 3 (3 takes 15 minutes and a heap of 3 GB). Default: 2.")
    @Within(min = 1, max = 3)
    private int checkers;

    @Mixin
    private ThreadsOption threadsOption;

    @Override
    protected void run() {
        int threads = threadsOption.count();
        ReducedGame game = new ReducedGame(checkers);
        ReducedOutcomes outcomes = ReducedOutcomes.of(
                ReducedSolver.solve(game, threads, SOLVED, ReducedSolver.Progress.NONE),
                threads,
                ReducedSolver.Progress.NONE);
        ReducedCube cube = ReducedCube.solve(game, threads, SETTLED, ReducedSolver.Progress.NONE);
        print("contact", known(game, outcomes, cube, true));
        print("races", known(game, outcomes, cube, false));
    }

    /** Unfinished positions of a kind whose chances count, each as likely as any other. */
    private static List<Known> known(ReducedGame game, ReducedOutcomes outcomes, ReducedCube cube, boolean contact) {
        int[] cells = new int[MAX_POSITIONS];
        int found = 0;
        SplittableRandom random = new SplittableRandom(1);
        int[] planes = new int[Planes.STRIDE];
        float[] chances = new float[Outcomes.COUNT];
        for (int cell = 0; cell < game.cells(); cell++) {
            if (!game.unfinished(cell)) {
                continue;
            }
            game.copyPlanes(cell, planes, 0);
            outcomes.evaluate(planes, 0, chances, 0);
            if (Planes.contact(planes, 0) == contact && CubeFit.counts(win(chances))) {
                // Every one so far has the same chance to be among those kept.
                int place = found < cells.length ? found : random.nextInt(found + 1);
                if (place < cells.length) {
                    cells[place] = cell;
                }
                found++;
            }
        }
        List<Known> known = new ArrayList<>();
        for (int i = 0; i < Math.min(found, cells.length); i++) {
            game.copyPlanes(cells[i], planes, 0);
            outcomes.evaluate(planes, 0, chances, 0);
            CubeFit.Known values = new CubeFit.Known(
                    GammonShares.of(chances, 0),
                    win(chances),
                    cube.values(cells[i], CubeOwner.CENTRE),
                    cube.values(cells[i], CubeOwner.ME));
            double pips = (Planes.pips(planes, 0) + Planes.pips(planes, Planes.SIDE)) / 2.0;
            known.add(new Known(values, contact ? EfficiencyByRegime.CONTACT : EfficiencyByRegime.ofRace(pips)));
        }
        return known;
    }

    private static double win(float[] chances) {
        return (double) chances[0] + chances[1] + chances[2];
    }

    private void print(String name, List<Known> positions) {
        CubeFit fit = new CubeFit();
        for (int i = 0; i < positions.size(); i += 2) {
            fit.add(positions.get(i).values);
        }
        CubeFit.Errors fitted = new CubeFit.Errors();
        CubeFit.Errors shipped = new CubeFit.Errors();
        CubeFit.Errors dead = new CubeFit.Errors();
        for (int i = 1; i < positions.size(); i += 2) {
            fitted.add(positions.get(i).values, fit.best());
            shipped.add(positions.get(i).values, positions.get(i).shipped);
            dead.add(positions.get(i).values, CubeEfficiency.constant(0));
        }
        out().printf(Locale.ROOT, "%d against %d, %s, money without the Jacoby rule%n", checkers, checkers, name);
        out().println("  shipped  " + shipped);
        out().println("  fitted on the other half (" + CubeFit.name(fit.best()) + ")  " + fitted);
        out().println("  a dead cube  " + dead);
    }
}
