package org.pipwright.bench.search;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.Choice;

/** How many positions a CPU second an evaluator values if they are handed to it: all results of 21 rolls in one call. */
final class RawSpeed {
    private RawSpeed() {}

    static double of(PositionEvaluator evaluator, List<Choice> choices, int rounds) {
        List<int[]> batches = new ArrayList<>();
        choices.forEach(choice -> batches.add(resultsOfAllRolls(choice.planes())));
        int longest = batches.stream().mapToInt(batch -> batch.length).max().orElseThrow() / Planes.STRIDE;
        float[] out = new float[longest * Outcomes.COUNT];
        long valued = 0;
        long began = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        for (int round = 0; round < rounds; round++) {
            for (int i = 0; i < batches.size(); i++) {
                int count = batches.get(i).length / Planes.STRIDE;
                evaluator.evaluateResults(choices.get(i).planes(), 0, batches.get(i), count, out);
                valued += count;
            }
        }
        return valued / ((ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - began) / 1e9);
    }

    private static int[] resultsOfAllRolls(int[] planes) {
        PlayGenerator generator = new PlayGenerator();
        int[] all = new int[0];
        for (Roll roll : Roll.all()) {
            int count = generator.generate(planes, 0, roll.high(), roll.low());
            int at = all.length;
            all = Arrays.copyOf(all, at + count * Planes.STRIDE);
            System.arraycopy(generator.results(), 0, all, at, count * Planes.STRIDE);
        }
        return all;
    }
}
