package org.pipwright.training.cuda;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.network.Net;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.roll.Roll;
import org.pipwright.training.device.DeviceAgreement;

/** Decisions that an accelerator has made for a net, to be made again by this machine. Any thread may add some. */
final class MadeDecisions {
    private final List<Made> all = new ArrayList<>();

    /** A position before a roll, and the result that was chosen. */
    private record Made(int[] planes, Roll roll, int[] result) {}

    /** How one decision compares. */
    private record Compared(boolean differs, double cost) {}

    synchronized void add(int[] planes, int at, Roll roll, int[] result) {
        all.add(new Made(Arrays.copyOfRange(planes, at, at + 8), roll, result));
    }

    /** Makes them again, by all threads. */
    DeviceAgreement compare(Net net) {
        ThreadLocal<PositionEvaluator> evaluators = ThreadLocal.withInitial(() -> new NetworkEvaluator(net));
        List<Compared> compared = all.parallelStream()
                .map(made -> compare(made, evaluators.get()))
                .toList();
        long differing = compared.stream().filter(Compared::differs).count();
        double cost = compared.stream().mapToDouble(Compared::cost).sum();
        return new DeviceAgreement(true, compared.size(), differing, compared.isEmpty() ? 0 : cost / compared.size());
    }

    private static Compared compare(Made made, PositionEvaluator evaluator) {
        PlayGenerator plays = new PlayGenerator();
        int count = plays.generate(made.planes, 0, made.roll.high(), made.roll.low());
        float[] chances = new float[6 * count];
        evaluator.evaluateResults(made.planes, 0, plays.results(), count, chances);
        int best = 0;
        int chosen = -1;
        for (int k = 0; k < count; k++) {
            best = Chances.equity(chances, 6 * k) > Chances.equity(chances, 6 * best) ? k : best;
            chosen = Arrays.equals(plays.results(), 8 * k, 8 * k + 8, made.result, 0, 8) ? k : chosen;
        }
        double cost = Chances.equity(chances, 6 * best) - Chances.equity(chances, 6 * chosen);
        return new Compared(best != chosen, cost);
    }
}
