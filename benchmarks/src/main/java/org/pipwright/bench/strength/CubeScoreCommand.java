package org.pipwright.bench.strength;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Predicate;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.LookaheadOption;
import org.pipwright.bench.NetOption;
import org.pipwright.bench.Nets;
import org.pipwright.bench.ThreadsOption;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Prints what a net with some lookahead loses by its decisions about the cube. */
@Command(name = "cube-score", description = "What a net loses on the cube decisions of a reference.")
public final class CubeScoreCommand extends BenchCommand {
    @Option(names = "--reference", required = true, paramLabel = "FILE", description = "The reference.")
    private Path file;

    @Mixin
    private NetOption net;

    @Mixin
    private LookaheadOption lookahead;

    @Mixin
    private ThreadsOption threads;

    /** What some decisions lost: those of the side on roll, and the answers to a double. */
    private static final class Row {
        private final Score doubling = new Score();
        private final Score answering = new Score();
        private double errors;

        void add(CubeReference reference, CubeValues judged) {
            double lost = reference.lostDoubling(judged);
            doubling.add(lost, lost == 0, 0);
            lost = reference.lostAnswering(judged);
            answering.add(lost, lost == 0, 0);
            errors += reference.error();
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "%9d %s %s %15.4f",
                    doubling.decisions(),
                    of(doubling),
                    of(answering),
                    errors / doubling.decisions());
        }

        private static String of(Score score) {
            return String.format(
                    Locale.ROOT, "%9.4f ± %6.4f %5.0f%%", score.meanLoss(), score.lossError(), 100 * score.bestShare());
        }
    }

    @Override
    protected void run() throws IOException {
        List<CubeReference> references = JsonLines.read(file, CubeReferenceHeader.class, CubeReference.class)
                .records();
        Map<String, Predicate<CubeReference>> kinds = kinds();
        Map<String, Row> rows = new LinkedHashMap<>();
        Effort effort = Effort.lookahead(lookahead.rolls());
        try (Judge judge = new Judge(Nets.withTables(net.load(), threads.count()), threads.count())) {
            for (CubeReference reference : references) {
                CubeValues judged =
                        judge.ask(reference.decision().question(), effort).cube();
                kinds.forEach((name, kind) -> {
                    if (kind.test(reference)) {
                        rows.computeIfAbsent(name, n -> new Row()).add(reference, judged);
                    }
                });
            }
        }
        out().println(net.name() + " with bear-off tables, lookahead " + lookahead.rolls());
        out().printf(
                        "%-18s %9s %25s %25s %15s%n",
                        "", "decisions", "lost doubling, right", "lost answering, right", "reference error");
        // In the order of the kinds, not in that of the references.
        kinds.keySet().stream().filter(rows::containsKey).forEach(name -> out().printf(
                        "%-18s %s%n", name, rows.get(name)));
    }

    private static Map<String, Predicate<CubeReference>> kinds() {
        Map<String, Predicate<CubeReference>> kinds = new LinkedHashMap<>();
        for (Regime regime : Regime.values()) {
            kinds.put(regime.words(), reference -> reference.decision().regime() == regime);
        }
        kinds.put("money", reference -> reference.decision().away() == null);
        kinds.put("matches", reference -> reference.decision().away() != null);
        kinds.put("all", reference -> true);
        return kinds;
    }
}
