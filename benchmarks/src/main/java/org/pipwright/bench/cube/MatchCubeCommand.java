package org.pipwright.bench.cube;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.NetOption;
import org.pipwright.bench.Nets;
import org.pipwright.bench.SeedOption;
import org.pipwright.bench.ThreadsOption;
import org.pipwright.bench.Within;
import org.pipwright.engine.cube.CubeEfficiency;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.matchtable.CubeUse;
import org.pipwright.engine.score.MatchScore;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/**
 * The cube model at match scores against true values: exact ones of endings and pip races, and games with the cube and
 * variance reduction of contact and longer races. Of the positions of each kind, every other one is for the fit of the
 * efficiencies, over all scores together, and the rest are scored. Scores are done one after another, each printed at once.
 */
@Command(name = "match-cube", description = "Fits cube efficiencies at match scores; tells how far the model is off.")
public final class MatchCubeCommand extends BenchCommand {
    @Option(
            names = "--scores",
            paramLabel = "N,M",
            arity = "1..*",
            description = "Scores, as points to go of the side on roll, then of the other (default: ${DEFAULT-VALUE}).")
    private List<String> scores = List.of("2,2", "3,3", "4,2", "2,4", "5,3", "3,5", "5,5", "9,9");

    @Option(
            names = "--rolled-out",
            paramLabel = "N",
            description = "Positions with contact, and races, to play out at each score (default: none).")
    @Within(min = 0, max = 100_000)
    private int rolledOut;

    @Option(names = "--trials", paramLabel = "N", description = "Games for each cube (default: ${DEFAULT-VALUE}).")
    @Within(min = 2, max = 1_000_000)
    private int trials = 36;

    @Mixin
    private NetOption net;

    @Mixin
    private SeedOption seed;

    @Mixin
    private ThreadsOption threads;

    private final Map<String, MatchFit> fits = new LinkedHashMap<>();
    private final Map<String, List<MatchKnown>> scored = new LinkedHashMap<>();

    @Override
    protected void run() {
        List<MatchScore> all = new ArrayList<>();
        scores.forEach(text -> all.add(score(text)));
        Knowledge knowledge = Nets.withTables(net.load(), threads.count());
        MatchRaces races = new MatchRaces(knowledge.tables().orElseThrow(), seed.value());
        try (MatchGames games = new MatchGames(knowledge, seed.value(), trials, threads.count())) {
            for (MatchScore score : all) {
                out().println(score.mine() + "-away against " + score.theirs() + "-away");
                races.at(score).forEach(this::take);
                if (rolledOut > 0) {
                    games.at(score, rolledOut).forEach(this::take);
                }
                out().flush();
            }
        }
        out().println("all scores together");
        scored.forEach((kind, known) -> print(kind, known, fits.get(kind)));
    }

    private static MatchScore score(String text) {
        String[] parts = text.split(",");
        try {
            return new MatchScore(Integer.parseInt(parts[0]), Integer.parseInt(parts[1]), false);
        } catch (NumberFormatException | ArrayIndexOutOfBoundsException e) {
            throw new IllegalArgumentException(
                    "'" + text + "' is not a score: write the points to go of both sides, as in 3,5", e);
        }
    }

    /** Positions of a kind at a score: every other one for the fit, the rest to be scored. */
    private void take(String kind, List<MatchKnown> known) {
        MatchFit fit = fits.computeIfAbsent(kind, k -> new MatchFit());
        List<MatchKnown> rest = new ArrayList<>();
        for (int i = 0; i < known.size(); i++) {
            if (i % 2 == 0) {
                fit.add(known.get(i));
            } else {
                rest.add(known.get(i));
            }
        }
        scored.computeIfAbsent(kind, k -> new ArrayList<>()).addAll(rest);
        print(kind, rest, null);
    }

    private void print(String kind, List<MatchKnown> known, MatchFit fit) {
        MatchFit.Errors shipped = new MatchFit.Errors();
        MatchFit.Errors walk = new MatchFit.Errors();
        MatchFit.Errors fitted = new MatchFit.Errors();
        CubeEfficiency best = fit == null || fit.empty() ? null : fit.best();
        for (MatchKnown each : known) {
            shipped.add(each, each.use());
            walk.add(each, new CubeUse(each.use().walk(), CubeEfficiency.constant(1)));
            if (best != null) {
                fitted.add(each, new CubeUse(each.use().walk(), best));
            }
        }
        out().println("  " + kind);
        out().println("    shipped         " + shipped);
        out().println("    the walk alone  " + walk);
        if (best != null) {
            out().println("    fitted on other positions (" + fit + ")");
            out().println("                    " + fitted);
        }
    }
}
