package org.pipwright.bench.speed;

import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.ExactFirstEvaluator;
import org.pipwright.engine.bearoff.OneSidedTable;
import org.pipwright.engine.bearoff.TableProgress;
import org.pipwright.engine.bearoff.TwoSidedTable;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;

/** The exact tables: one operation is one look-up, or the six chances of one race, of a thousand random positions. */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
public class TableBenchmark {
    private static final int COUNT = 1000;

    private final float[] out = new float[Outcomes.COUNT];
    private OneSidedTable oneSided;
    private ExactFirstEvaluator evaluator;
    private int[] races;
    private int[] lastSix;

    @Setup
    public void prepare() {
        oneSided = OneSidedTable.build(EndgameTables.HOME, 1, TableProgress.NONE);
        TwoSidedTable twoSided = TwoSidedTable.build(EndgameTables.LAST_SIX, 1, TableProgress.NONE);
        evaluator = new ExactFirstEvaluator(EndgameTables.of(oneSided, twoSided), (planes, at, chances, outAt) -> {
            throw new IllegalStateException("every position here is covered");
        });
        SplittableRandom random = new SplittableRandom(1);
        races = positions(random, 7, 15);
        lastSix = positions(random, 1, 6);
    }

    /** Sides with so many checkers on points 1 to 6, one borne off more. */
    private static int[] positions(SplittableRandom random, int least, int most) {
        int[] planes = new int[COUNT * Planes.STRIDE];
        for (int side = 0; side < planes.length; side += Planes.SIDE) {
            Planes.add(planes, side, Planes.OFF);
            for (int n = least + random.nextInt(most - least + 1); n > 0; n--) {
                Planes.add(planes, side, 1 + random.nextInt(6));
            }
        }
        return planes;
    }

    @Benchmark
    @OperationsPerInvocation(2 * COUNT)
    public double meanRolls() {
        double sum = 0;
        for (int side = 0; side < races.length; side += Planes.SIDE) {
            sum += oneSided.mean(oneSided.index().of(races, side));
        }
        return sum;
    }

    @Benchmark
    @OperationsPerInvocation(COUNT)
    public float exactChances() {
        return evaluate(lastSix);
    }

    @Benchmark
    @OperationsPerInvocation(COUNT)
    public float raceFromDistributions() {
        return evaluate(races);
    }

    private float evaluate(int[] positions) {
        float sum = 0;
        for (int at = 0; at < positions.length; at += Planes.STRIDE) {
            evaluator.evaluate(positions, at, out, 0);
            sum += out[0];
        }
        return sum;
    }
}
