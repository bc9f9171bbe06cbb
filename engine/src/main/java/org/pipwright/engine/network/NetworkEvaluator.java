package org.pipwright.engine.network;

import java.util.Arrays;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.FinishedGames;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.position.Planes;

/** Evaluates with a net: two networks, one for positions with contact and one for races, or one network for all. */
public final class NetworkEvaluator implements PositionEvaluator {
    private final Lane contact;
    private final Lane race;
    private final PositionEvaluator quick;
    private final int[] base = new int[Planes.STRIDE];

    /** The results of one call that go to one network. */
    private static final class Lane {
        private final SiblingEvaluation evaluation;
        private int[] planes = new int[64 * Planes.STRIDE];
        private int[] origin = new int[64];
        private float[] chances = new float[64 * Outcomes.COUNT];
        private int size;

        Lane(SiblingEvaluation evaluation) {
            this.evaluation = evaluation;
        }

        void add(int[] results, int at, int index) {
            if (size == origin.length) {
                planes = Arrays.copyOf(planes, 2 * planes.length);
                origin = Arrays.copyOf(origin, 2 * origin.length);
                chances = Arrays.copyOf(chances, 2 * chances.length);
            }
            Planes.copySwapped(results, at, planes, size * Planes.STRIDE);
            origin[size++] = index;
        }

        void run(int[] base, float[] out) {
            if (size == 0) {
                return;
            }
            evaluation.begin(base, 0);
            evaluation.evaluateSiblings(planes, size, chances);
            for (int i = 0; i < size; i++) {
                int from = i * Outcomes.COUNT;
                int to = origin[i] * Outcomes.COUNT;
                System.arraycopy(chances, from, out, to, Outcomes.COUNT);
                Chances.swap(out, to);
            }
            size = 0;
        }
    }

    /**
     * An evaluator for one thread.
     *
     * @param model the model whose net judges; a quick net beside it becomes this evaluator's quick one
     */
    public NetworkEvaluator(Model model) {
        this(model.net(), model.quick().map(NetworkEvaluator::new).orElse(null));
    }

    /**
     * An evaluator for one thread.
     *
     * @param net the net to evaluate with
     */
    public NetworkEvaluator(Net net) {
        this(net, null);
    }

    private NetworkEvaluator(Net net, PositionEvaluator first) {
        quick = first == null ? this : first;
        if (net instanceof Lanes lanes) {
            contact = new Lane(new NetworkEvaluation(lanes.contact()));
            race = new Lane(new NetworkEvaluation(lanes.race()));
        } else {
            contact = new Lane(new ResidualEvaluation((ResidualNetwork) net));
            race = contact;
        }
    }

    @Override
    public PositionEvaluator quick() {
        return quick;
    }

    @Override
    public void evaluate(int[] planes, int at, float[] out, int outAt) {
        Lane lane = Planes.contact(planes, at) ? contact : race;
        lane.evaluation.evaluate(planes, at, out, outAt);
    }

    @Override
    public void evaluateResults(int[] parent, int parentAt, int[] results, int count, float[] out) {
        for (int i = 0; i < count; i++) {
            int at = i * Planes.STRIDE;
            if (!FinishedGames.write(results, at, out, i * Outcomes.COUNT)) {
                (Planes.contact(results, at) ? contact : race).add(results, at, i);
            }
        }
        Planes.copySwapped(parent, parentAt, base, 0);
        contact.run(base, out);
        race.run(base, out);
    }
}
