package org.pipwright.bench.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.bench.BenchNetworks;
import org.pipwright.bench.speed.SearchBenchmark;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.search.Choice;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.Lookahead;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.ParallelLookahead;
import org.pipwright.engine.search.Searched;
import org.pipwright.models.ModelCatalog;

/** What is measured is what the search does. */
class SearchBenchTest {
    private static Judgement judgement() {
        return Judgement.by(new NetworkEvaluator(BenchNetworks.model()));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 14})
    void theBenchmarkChoosesAsASearchByThreadsDoes(int memory) {
        SearchBenchmark benchmark = new SearchBenchmark();
        benchmark.lookahead = 1;
        benchmark.memory = memory;
        benchmark.net = "fifth";
        benchmark.prepare();
        SearchBenchmark.Valued valued = new SearchBenchmark.Valued();
        var model = ModelCatalog.shipped().load("fifth");
        try (ParallelLookahead search =
                new ParallelLookahead(() -> Judgement.by(new NetworkEvaluator(model)), LookaheadSettings.DEFAULT, 2)) {
            for (Choice choice : Choices.of(20, 4)) {
                List<Searched> lines = search.search(choice, 1);
                double best = lines.stream()
                        .filter(line -> line.lookahead() == 1)
                        .mapToDouble(line -> line.outcomes().equity())
                        .max()
                        .getAsDouble();
                assertEquals(
                        best, lines.get(benchmark.choose(valued)).outcomes().equity(), 1e-6);
            }
        }
        assertTrue(valued.positions > 20 * 21 * 2, "positions are counted: " + valued.positions);
    }

    @Test
    void effortCountsWhatWasValued() {
        List<Choice> choices = Choices.of(3, 7);
        Lookahead search = new Lookahead(judgement(), LookaheadSettings.DEFAULT);
        Effort effort = Effort.of(search, choices, 1);
        assertEquals(search.evaluations(), effort.valued());
        assertEquals(3, effort.choices());
        assertTrue(effort.most() <= effort.seconds() && effort.seconds() >= 0);
        assertTrue(RawSpeed.of(judgement().evaluator(), choices, 1) > 0);
    }

    @Test
    void theWidestSettingsLoseNothingAgainstThemselves() {
        String table = new PruningTable(SearchBenchTest::judgement).of(Choices.of(1, 9));
        List<String> rows = table.lines().skip(2).toList();
        assertEquals(9, rows.size());
        assertTrue(rows.get(0).contains("(reference) | 0.00000 |"), table);
    }
}
