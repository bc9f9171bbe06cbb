package org.pipwright.bench.speed;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.OneSidedTable;
import org.pipwright.engine.bearoff.TableProgress;
import org.pipwright.engine.bearoff.TwoSidedTable;

/** Building the standard tables with one thread and more; run cold, as a first use is. */
@State(Scope.Thread)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class TableBuildBenchmark {
    /** Threads that build. */
    @Param({"1", "2", "4"})
    public int threads;

    @Benchmark
    public OneSidedTable oneSided() {
        return OneSidedTable.build(EndgameTables.HOME, threads, TableProgress.NONE);
    }

    @Benchmark
    public TwoSidedTable twoSided() {
        return TwoSidedTable.build(EndgameTables.LAST_SIX, threads, TableProgress.NONE);
    }
}
