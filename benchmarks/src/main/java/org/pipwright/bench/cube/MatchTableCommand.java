package org.pipwright.bench.cube;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.NetOption;
import org.pipwright.bench.SeedOption;
import org.pipwright.bench.Within;
import org.pipwright.engine.cube.CubeWalk;
import org.pipwright.engine.files.AtomicFile;
import org.pipwright.engine.matchtable.MatchTable;
import org.pipwright.engine.matchtable.MatchTableBuilder;
import org.pipwright.engine.matchtable.MatchTableCsv;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.network.NetworkEvaluator;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/**
 * Measures the gammon and backgammon shares of a net's games against itself, and how far a roll moves the chance to win,
 * then computes the match table from them and writes it with what it rests on.
 */
@Command(name = "match-table", description = "Computes the match table from a net's games and writes it.")
public final class MatchTableCommand extends BenchCommand {
    private static final int LENGTH = 25;
    private static final int CELLS = 50;

    @Mixin
    private NetOption net;

    @Option(names = "--games", paramLabel = "N", required = true, description = "Games to play.")
    @Within(min = 1, max = 1_000_000_000)
    private int games;

    @Mixin
    private SeedOption seedOption;

    @Option(names = "--out", paramLabel = "FILE", required = true, description = "The file to write.")
    private Path file;

    @Override
    protected void run() throws IOException {
        long seed = seedOption.value();
        Model model = net.load();
        GameRates rates = new GameRates(new NetworkEvaluator(model));
        rates.play(seed, games);
        CubeWalk walk = new CubeWalk(CELLS, steps(rates.deviation()));
        CubeWalk opening = new CubeWalk(CELLS, steps(rates.firstDeviation()));
        MatchTable table =
                MatchTableBuilder.build(LENGTH, rounded(rates.gammons()), rounded(rates.backgammons()), walk, opening);
        String text = MatchTableCsv.print(table, comments(net.name(), model, seed, rates, walk, opening));
        AtomicFile.write(file, out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
        out().println(text.substring(0, text.indexOf("\naway")));
    }

    /** Coin-flip steps a roll whose variance is nearest to the measured one. */
    private static int steps(double deviation) {
        return (int) Math.max(1, Math.round(deviation * deviation * CELLS * CELLS));
    }

    /** To a tenth of a per cent: what the sample can tell. */
    private static double rounded(double share) {
        return Math.round(share * 1000) / 1000.0;
    }

    private static List<String> comments(
            String net, Model model, long seed, GameRates rates, CubeWalk walk, CubeWalk opening) {
        return List.of(
                "Chances to win a match, computed by Pipwright from a model; not copied from any other table.",
                "Model: each game starts even; either side is as likely to roll first; the chance to win makes a fair walk",
                "with " + walk.stepsPerRoll() + " coin-flip steps of 1/" + walk.cells() + " a roll ("
                        + opening.stepsPerRoll() + " where it is about opening rolls, after the",
                "Crawford game); both sides use the cube as well as that allows (recursion over cube levels and scores);",
                "no cube before the first roll and in the Crawford game; wins split into single games, gammons and backgammons by",
                "fixed shares: " + rounded(rates.gammons()) + " gammons, " + rounded(rates.backgammons())
                        + " backgammons.",
                String.format(
                        Locale.ROOT,
                        "Measured on %,d cubeless games of the net %s against itself, without lookahead, seed %d:",
                        rates.games(),
                        net,
                        seed),
                String.format(
                        Locale.ROOT,
                        "gammons %.4f, backgammons %.4f, %.1f rolls a game; root mean square change of the chance to win",
                        rates.gammons(),
                        rates.backgammons(),
                        rates.turnsPerGame()),
                String.format(
                        Locale.ROOT,
                        "in a roll from chances of 20 to 80 %%: %.4f; in the first two rolls: %.4f.",
                        rates.deviation(),
                        rates.firstDeviation()),
                "SHA-256 of the net's weights: " + model.notes().get(ModelFile.SHA256));
    }
}
