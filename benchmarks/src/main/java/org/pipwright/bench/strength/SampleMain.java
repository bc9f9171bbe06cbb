package org.pipwright.bench.strength;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.pipwright.bench.Main;
import org.pipwright.bench.Options;
import org.pipwright.engine.duel.Baselines;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.evaluation.NetworkEvaluator;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.models.ModelCatalog;

/** Draws the decisions of the strength suite and writes them to a file. */
public final class SampleMain {
    private static final List<String> BASELINES = List.of("racer", "hitter", "builder");

    private static final int MOST_GAMES = 200_000;

    private SampleMain() {}

    public static void main(String[] args) {
        Main.run(args, SampleMain::run);
    }

    private static void run(List<String> args) throws IOException {
        Options options = new Options(args, Set.of("--out", "--judge", "--nets", "--seed", "--each"), Set.of());
        Path out = Path.of(options.required("--out"));
        String judgeName =
                options.text("--judge").orElseGet(() -> ModelCatalog.shipped().defaultName());
        Model judge = ModelCatalog.shipped().load(judgeName);
        int seed = options.number("--seed", 1, 0, Integer.MAX_VALUE);
        int each = options.number("--each", 350, 1, 100_000);
        List<Entrant> entrants = entrants(
                options.text("--nets").map(names -> List.of(names.split(","))).orElseGet(() -> ModelCatalog.shipped()
                        .names()));
        Sampler sampler = new Sampler(entrants, new NetworkEvaluator(judge), seed, each);
        List<Decision> decisions = sampler.sample(MOST_GAMES);
        DecisionsHeader header = new DecisionsHeader(
                DecisionsHeader.KIND,
                seed,
                entrants.stream().map(Entrant::name).collect(Collectors.toList()),
                judgeName,
                judge.notes().get(ModelFile.SHA256),
                Sampler.WITHIN,
                each,
                sampler.games());
        JsonLines.write(out, header, decisions);
        System.out.println(decisions.size() + " decisions from " + sampler.games() + " games in " + out);
    }

    private static List<Entrant> entrants(List<String> nets) {
        List<Entrant> entrants = new ArrayList<>();
        nets.forEach(
                net -> entrants.add(Entrant.ofModel(net, ModelCatalog.shipped().load(net), 0)));
        BASELINES.forEach(name -> entrants.add(Baselines.named(name).orElseThrow()));
        return entrants;
    }
}
