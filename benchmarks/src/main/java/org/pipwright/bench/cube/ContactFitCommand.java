package org.pipwright.bench.cube;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.NetOption;
import org.pipwright.bench.Nets;
import org.pipwright.bench.SeedOption;
import org.pipwright.bench.ThreadsOption;
import org.pipwright.bench.Within;
import org.pipwright.engine.cube.ContactEfficiency;
import org.pipwright.engine.cube.CubeEfficiency;
import org.pipwright.engine.cube.EfficiencyByRegime;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/**
 * Fits the cube efficiencies of positions with contact to whole games, played out, and to solved games with a few checkers
 * a side, all of which count alike. Every other position is for the fit; the rest are scored, beside the shipped
 * efficiencies and one number for all.
 */
@Command(
        name = "contact-fit",
        description = "Fits cube efficiencies in contact to games with the cube and solved ones.")
public final class ContactFitCommand extends BenchCommand {
    /** What owners came to on average over the first net's games: 20 % and 80 %. */
    private static final CubeEfficiency ONE_FOR_ALL = new CubeEfficiency(0.70, 0.84);

    @Mixin
    private NetOption net;

    @Option(
            names = "--each",
            paramLabel = "N",
            description = "Positions to play out in each of six ranges of pips (default: ${DEFAULT-VALUE}).")
    @Within(min = 2, max = 1_000_000)
    private int each = 100;

    @Option(names = "--trials", paramLabel = "N", description = "Games for each cube (default: ${DEFAULT-VALUE}).")
    @Within(min = 2, max = 1_000_000)
    private int trials = 36;

    @Option(
            names = "--checkers",
            paramLabel = "N",
            defaultValue = "2",
            description = "Most checkers a side in solved games: 2, or 3, which takes 15 minutes and a heap of 3 GB"
                    + " (default: 2).")
    @Within(min = 2, max = 3)
    private int checkers;

    @Mixin
    private SeedOption seed;

    @Mixin
    private ThreadsOption threads;

    /** Positions to be scored. */
    private record Scored(String name, List<CubeKnown> positions) {}

    @Override
    protected void run() {
        ContactFit fit = new ContactFit();
        List<Scored> scored = new ArrayList<>();
        for (int n = 2; n <= checkers; n++) {
            List<CubeKnown> positions = new SolvedCube(n, threads.count()).positions(true);
            fit.add(half(positions, 0));
            scored.add(new Scored(n + " checkers a side, solved", half(positions, 1)));
        }
        try (ContactGames games =
                new ContactGames(Nets.withTables(net.load(), threads.count()), seed.value(), trials, threads.count())) {
            List<CubeKnown> fitted = new ArrayList<>();
            for (ContactGames.Range range : games.of(each)) {
                fitted.addAll(half(range.positions(), 0));
                scored.add(new Scored("games, " + range.name(), half(range.positions(), 1)));
            }
            fit.add(fitted);
        }
        out().println("fitted on other positions: " + fit);
        ContactEfficiency best = fit.best();
        for (Scored positions : scored) {
            out().println(positions.name());
            print("shipped", positions, known -> EfficiencyByRegime.ofContact(known.pips(), known.checkers()));
            print("fitted", positions, known -> best.at(known.pips(), known.checkers()));
            print("one for all", positions, known -> ONE_FOR_ALL);
            print("a dead cube", positions, known -> CubeEfficiency.constant(0));
        }
    }

    private static List<CubeKnown> half(List<CubeKnown> positions, int which) {
        List<CubeKnown> half = new ArrayList<>();
        for (int i = which; i < positions.size(); i += 2) {
            half.add(positions.get(i));
        }
        return half;
    }

    private void print(String name, Scored scored, Function<CubeKnown, CubeEfficiency> efficiency) {
        CubeFit.Errors errors = new CubeFit.Errors();
        scored.positions().forEach(known -> errors.add(known.values(), efficiency.apply(known)));
        out().println("  " + name + "  " + errors);
    }
}
