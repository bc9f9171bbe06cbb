package org.pipwright.bench.speed;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.pipwright.bench.BenchPositions;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/** Play generation: one operation is one roll of one position, over all 21 rolls of a thousand positions. */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
public class PlayGeneratorBenchmark {
    /** Who played the games that the positions come from. */
    @Param({"random", "net"})
    public String play;

    private final PlayGenerator generator = new PlayGenerator();
    private int[] planes;

    /** Distinct resulting positions a second, beside the rolls. */
    @State(Scope.Thread)
    @AuxCounters(AuxCounters.Type.OPERATIONS)
    public static class Resulting {
        public long positions;
    }

    @Setup
    public void prepare() {
        planes = BenchPositions.planes(play.equals("net") ? BenchPositions.netPlay() : BenchPositions.randomPlay());
    }

    @Benchmark
    @OperationsPerInvocation(BenchPositions.COUNT * Roll.COUNT)
    public int generate(Resulting resulting) {
        int count = 0;
        for (int at = 0; at < planes.length; at += Planes.STRIDE) {
            for (int high = 1; high <= 6; high++) {
                for (int low = 1; low <= high; low++) {
                    count += generator.generate(planes, at, high, low);
                }
            }
        }
        resulting.positions += count;
        return count;
    }
}
