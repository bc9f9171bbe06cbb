package org.pipwright.bench.cube;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.ThreadsOption;
import org.pipwright.bench.Within;
import org.pipwright.engine.cube.CubeEfficiency;
import org.pipwright.engine.cube.EfficiencyByRegime;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/**
 * Holds the cube model against a reduced game that is solved with the cube: its exact chances go in, its values and
 * decisions are compared with exact ones, with contact and in races apart. One efficiency for all is fitted on every other
 * position and scored on the rest, beside those by regime that ship.
 */
@Command(name = "reduced-cube", description = "Regret of the cube model in a game that is solved with the cube.")
public final class ReducedCubeCommand extends BenchCommand {
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
        SolvedCube solved = new SolvedCube(checkers, threadsOption.count());
        print("contact", solved.positions(true), each -> EfficiencyByRegime.ofContact(each.pips(), each.checkers()));
        print("races", solved.positions(false), each -> EfficiencyByRegime.ofRace(each.pips()));
    }

    private void print(String name, List<CubeKnown> positions, Function<CubeKnown, CubeEfficiency> regime) {
        CubeFit fit = new CubeFit();
        for (int i = 0; i < positions.size(); i += 2) {
            fit.add(positions.get(i).values());
        }
        CubeFit.Errors fitted = new CubeFit.Errors();
        CubeFit.Errors shipped = new CubeFit.Errors();
        CubeFit.Errors dead = new CubeFit.Errors();
        for (int i = 1; i < positions.size(); i += 2) {
            CubeFit.Known values = positions.get(i).values();
            fitted.add(values, fit.best());
            shipped.add(values, regime.apply(positions.get(i)));
            dead.add(values, CubeEfficiency.constant(0));
        }
        out().printf(Locale.ROOT, "%d against %d, %s, money without the Jacoby rule%n", checkers, checkers, name);
        out().println("  shipped  " + shipped);
        out().println("  fitted on the other half (" + CubeFit.name(fit.best()) + ")  " + fitted);
        out().println("  a dead cube  " + dead);
    }
}
