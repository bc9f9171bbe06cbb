package org.pipwright.engine.bearoff;

import java.util.Arrays;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.FinishedGames;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.position.Planes;

/**
 * Asks the exact table first, then the distributions, then another evaluator, as a rule a net. Serves one thread; the
 * tables may be shared, and are opened or built when the first position they cover is met.
 */
public final class ExactFirstEvaluator implements PositionEvaluator {
    /** Evaluators may write this many results more than they are asked for. */
    private static final int SPARE = 3;

    private final EndgameTables tables;
    private final PositionEvaluator otherwise;
    private final PositionEvaluator quick;
    private final RaceChances races;
    private final int[] child = new int[Planes.STRIDE];
    private int[] rest = new int[64 * Planes.STRIDE];
    private int[] origin = new int[64];
    private float[] restChances = new float[(64 + SPARE) * Outcomes.COUNT];

    /**
     * An evaluator for one thread.
     *
     * @param tables what is known
     * @param otherwise evaluates what no table covers; used by this evaluator only
     */
    public ExactFirstEvaluator(EndgameTables tables, PositionEvaluator otherwise) {
        this.tables = tables;
        this.otherwise = otherwise;
        this.races = new RaceChances(tables);
        PositionEvaluator first = otherwise.quick();
        quick = first == otherwise ? this : new ExactFirstEvaluator(tables, first);
    }

    @Override
    public PositionEvaluator quick() {
        return quick;
    }

    @Override
    public void evaluate(int[] planes, int at, float[] out, int outAt) {
        Basis basis = tables.basis(planes, at);
        if (basis == Basis.ESTIMATED) {
            otherwise.evaluate(planes, at, out, outAt);
        } else {
            races.write(basis, planes, at, out, outAt);
        }
    }

    /**
     * {@inheritDoc}
     *
     * <p>One look at the opponent's rearmost checker, which no play brings nearer home, settles for most positions with
     * contact that no table can help. Else the results that no table covers go to the other evaluator as one group.
     */
    @Override
    public void evaluateResults(int[] parent, int parentAt, int[] results, int count, float[] out) {
        if (Planes.rearmost(parent, parentAt + Planes.SIDE) > tables.points()) {
            otherwise.evaluateResults(parent, parentAt, results, count, out);
            return;
        }
        int left = 0;
        for (int i = 0; i < count; i++) {
            int at = i * Planes.STRIDE;
            int outAt = i * Outcomes.COUNT;
            if (FinishedGames.write(results, at, out, outAt)) {
                continue;
            }
            Basis basis = tables.basis(results, at);
            if (basis == Basis.ESTIMATED) {
                keep(results, at, left, i);
                left++;
            } else {
                Planes.copySwapped(results, at, child, 0);
                races.write(basis, child, 0, out, outAt);
                Chances.swap(out, outAt);
            }
        }
        if (left > 0) {
            evaluateRest(parent, parentAt, left, out);
        }
    }

    private void keep(int[] results, int at, int slot, int index) {
        if (slot == origin.length) {
            rest = Arrays.copyOf(rest, 2 * rest.length);
            origin = Arrays.copyOf(origin, 2 * origin.length);
            restChances = new float[(origin.length + SPARE) * Outcomes.COUNT];
        }
        System.arraycopy(results, at, rest, slot * Planes.STRIDE, Planes.STRIDE);
        origin[slot] = index;
    }

    private void evaluateRest(int[] parent, int parentAt, int left, float[] out) {
        otherwise.evaluateResults(parent, parentAt, rest, left, restChances);
        for (int slot = 0; slot < left; slot++) {
            int from = slot * Outcomes.COUNT;
            System.arraycopy(restChances, from, out, origin[slot] * Outcomes.COUNT, Outcomes.COUNT);
        }
    }
}
