package org.pipwright.bench.strength;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.Within;
import org.pipwright.engine.files.AtomicFile;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.Model;
import org.pipwright.models.ModelCatalog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Measures how long nets think and what they lose, and sets both beside their strength. */
@Command(name = "frontier", description = "Sets strength of nets against time a decision, in a table and a picture.")
public final class FrontierCommand extends BenchCommand {
    private static final int WARM_UP = 3;

    @Option(
            names = "--stands",
            required = true,
            paramLabel = "FILE",
            description = "What each net wins against the yardstick: name, net, points and error a line, tabs between.")
    private Path stands;

    @Option(names = "--reference", required = true, paramLabel = "FILE", description = "The reference.")
    private Path reference;

    @Option(
            names = "--passes",
            paramLabel = "N",
            description = "Timed passes over all decisions; the median counts (default: ${DEFAULT-VALUE}).")
    @Within(min = 1, max = 100)
    private int passes = 3;

    @Option(names = "--title", paramLabel = "TEXT", description = "Title of the picture (default: ${DEFAULT-VALUE}).")
    private String title = "How strong, and how long a decision takes";

    @Option(names = "--out", paramLabel = "FOLDER", required = true, description = "The folder to write to.")
    private Path folder;

    @Override
    protected void run() throws IOException {
        List<Reference> references = ScoreCommand.references(reference);
        List<Frontier.Timed> nets = new ArrayList<>();
        for (Stand stand : Stand.read(stands)) {
            nets.add(timed(stand, references));
        }
        Frontier frontier = new Frontier(nets);
        Files.createDirectories(folder);
        AtomicFile.write(
                folder.resolve("frontier.md"), to -> to.write(frontier.table().getBytes(StandardCharsets.UTF_8)));
        FrontierPicture.of(frontier, title).write(folder, "frontier");
        out().print(frontier.table());
    }

    private Frontier.Timed timed(Stand stand, List<Reference> references) {
        Model model = ModelCatalog.shipped().load(stand.net());
        double[] millis = new double[passes];
        Score score = null;
        for (int i = 0; i < passes; i++) {
            // Judges that know the same share a memory: each pass has one that knows no answer yet.
            try (Judge first = new Judge(Knowledge.of(model), 1);
                    Judge second = new Judge(Knowledge.of(model), 1)) {
                Scorer.warmUp(references, Chooser.byJudge(first, Effort.STATIC), Duration.ofSeconds(WARM_UP));
                score = Scorer.of(references, Chooser.byJudge(second, Effort.STATIC))
                        .all();
            }
            millis[i] = 1000 * score.secondsEach();
        }
        Arrays.sort(millis);
        int weights = model.net().weights()
                + model.quick().map(quick -> quick.weights()).orElse(0);
        return new Frontier.Timed(stand, weights, score.meanLoss(), score.lossError(), millis[passes / 2]);
    }
}
