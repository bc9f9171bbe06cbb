package org.pipwright.bench.strength;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiPredicate;
import java.util.stream.Collectors;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.SeedOption;
import org.pipwright.bench.Within;
import org.pipwright.engine.duel.Baselines;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.models.ModelCatalog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Draws the decisions of the strength suite and writes them to a file. */
@Command(name = "sample", description = "Draws the decisions of the strength suite.")
public final class SampleCommand extends BenchCommand {
    private static final List<String> BASELINES = List.of("racer", "hitter", "builder");

    static final int MAX_GAMES = 200_000;

    @Option(names = "--out", paramLabel = "FILE", required = true, description = "The file to write.")
    private Path file;

    @Option(
            names = "--judge",
            paramLabel = "NAME|FILE",
            description = "The net that judges which decisions are close (default: ${DEFAULT-VALUE}).")
    private String judgeName = ModelCatalog.shipped().defaultName();

    @Option(
            names = "--nets",
            split = ",",
            paramLabel = "NAMES",
            description = "Nets that play, separated by commas (default: those shipped); fixed baselines play too.")
    private List<String> nets = ModelCatalog.shipped().names();

    @Mixin
    private SeedOption seed;

    @Option(
            names = "--each",
            paramLabel = "N",
            description = "Decisions of each kind of position (default: ${DEFAULT-VALUE}).")
    @Within(min = 1, max = 100_000)
    private int each = 350;

    @Option(
            names = "--disagreeing",
            paramLabel = "N",
            description =
                    "Only decisions in which the judge chooses another play with lookahead N than without: harder ones.")
    @Within(min = 1, max = 2)
    private Integer disagreeing;

    @Override
    protected void run() throws IOException {
        Model judge = ModelCatalog.shipped().load(judgeName);
        List<Entrant> entrants = entrants(nets, BASELINES);
        Judge close = new Judge(Knowledge.of(judge), 1);
        Sampler sampler = new Sampler(entrants, close, seed.value(), each, wanted(close));
        List<Decision> decisions = sampler.sample(MAX_GAMES);
        DecisionsHeader header = new DecisionsHeader(
                DecisionsHeader.KIND,
                seed.value(),
                entrants.stream().map(Entrant::name).collect(Collectors.toList()),
                judgeName,
                judge.notes().get(ModelFile.SHA256),
                Sampler.WITHIN,
                each,
                sampler.games(),
                disagreeing);
        JsonLines.write(file, header, decisions);
        out().println(decisions.size() + " decisions from " + sampler.games() + " games in " + file);
    }

    private BiPredicate<Position, Roll> wanted(Judge judge) {
        if (disagreeing == null) {
            return (position, roll) -> true;
        }
        Chooser without = Chooser.byJudge(judge, Effort.STATIC);
        Chooser with = Chooser.byJudge(judge, Effort.lookahead(disagreeing));
        return (position, roll) -> !without.choose(position, roll).equals(with.choose(position, roll));
    }

    /** Nets, without lookahead, and fixed formulas, by their names. */
    static List<Entrant> entrants(List<String> nets, List<String> formulas) {
        List<Entrant> entrants = new ArrayList<>();
        nets.forEach(
                net -> entrants.add(Entrant.ofModel(net, ModelCatalog.shipped().load(net), 0)));
        formulas.forEach(name -> entrants.add(Baselines.named(name).orElseThrow()));
        return entrants;
    }
}
