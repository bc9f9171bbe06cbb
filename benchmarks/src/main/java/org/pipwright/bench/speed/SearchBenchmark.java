package org.pipwright.bench.speed;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.pipwright.bench.search.Choices;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.search.ChanceCache;
import org.pipwright.engine.search.Choice;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.Lookahead;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.models.ModelCatalog;

/** Lookahead by one thread with a net that ships: one operation is one choice, made with an empty memory. */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(jvmArgsAppend = {"-Dpipwright.kernel=vector", "--add-modules=jdk.incubator.vector"})
public class SearchBenchmark {
    private static final int CHOICES = 50;

    @Param({"1", "2"})
    public int lookahead;

    /** A net that ships. */
    @Param("standard")
    public String net;

    /** Base-2 logarithm of the entries of the memory; 1 is next to none. */
    @Param({"1", "14"})
    public int memory;

    private final List<Choice> choices = Choices.of(CHOICES, 4);
    private final float[] chances = new float[Outcomes.COUNT];
    private NetworkEvaluator evaluator;
    private int next;

    /** Positions valued a second, beside the choices. */
    @State(Scope.Thread)
    @AuxCounters(AuxCounters.Type.OPERATIONS)
    public static class Valued {
        public long positions;
    }

    @Setup
    public void prepare() {
        evaluator = new NetworkEvaluator(ModelCatalog.shipped().load(net));
    }

    @Benchmark
    public int choose(Valued valued) {
        Choice choice = choices.get(next++ % CHOICES);
        Lookahead search =
                new Lookahead(Judgement.by(evaluator), LookaheadSettings.DEFAULT, new ChanceCache(memory), () -> false);
        int chosen = search.choose(choice.planes(), 0, choice.results(), choice.count(), lookahead, chances);
        valued.positions += search.evaluations();
        return chosen;
    }
}
