package org.pipwright.bench.cube;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.reduced.ReducedCube;
import org.pipwright.engine.reduced.ReducedGame;
import org.pipwright.engine.reduced.ReducedOutcomes;
import org.pipwright.engine.reduced.ReducedSolver;

/** A game with one to three checkers a side, solved without and with the cube (money without the Jacoby rule). */
final class SolvedCube {
    /** Changes of sweeps, in points per unit of the cube: far below what the model is off. */
    private static final double SETTLED = 1e-7;

    private static final double SOLVED = 1e-7;

    /** Most positions of a kind, drawn at random where there are more. */
    private static final int MAX_POSITIONS = 200_000;

    private final ReducedGame game;
    private final ReducedOutcomes outcomes;
    private final ReducedCube cube;

    SolvedCube(int checkers, int threads) {
        game = new ReducedGame(checkers);
        outcomes = ReducedOutcomes.of(
                ReducedSolver.solve(game, threads, SOLVED, ReducedSolver.Progress.NONE),
                threads,
                ReducedSolver.Progress.NONE);
        cube = ReducedCube.solve(game, threads, SETTLED, ReducedSolver.Progress.NONE);
    }

    /** Unfinished positions with contact or without whose chances count, each as likely as any other. */
    List<CubeKnown> positions(boolean contact) {
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
        List<CubeKnown> known = new ArrayList<>();
        for (int i = 0; i < Math.min(found, cells.length); i++) {
            game.copyPlanes(cells[i], planes, 0);
            outcomes.evaluate(planes, 0, chances, 0);
            CubeFit.Known values = new CubeFit.Known(
                    GammonShares.of(chances, 0),
                    win(chances),
                    cube.values(cells[i], CubeOwner.CENTRE),
                    cube.values(cells[i], CubeOwner.ME));
            known.add(CubeKnown.of(planes, values));
        }
        return known;
    }

    private static double win(float[] chances) {
        return (double) chances[0] + chances[1] + chances[2];
    }
}
