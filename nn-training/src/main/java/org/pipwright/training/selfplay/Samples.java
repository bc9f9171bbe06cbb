package org.pipwright.training.selfplay;

import java.util.Arrays;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;

/** A growing list of samples: a position before the roll and the six chances a network should give for it. */
public final class Samples {
    private int[] planes;
    private float[] targets;
    private int size;

    /**
     * An empty list.
     *
     * @param capacity samples to make room for at first, at least 1
     */
    public Samples(int capacity) {
        planes = new int[capacity * Planes.STRIDE];
        targets = new float[capacity * Outcomes.COUNT];
    }

    /**
     * Adds one.
     *
     * @param from array that holds the position
     * @param at index of its first plane
     * @param target array that holds the six chances of the side on roll
     * @param targetAt index of the first
     */
    public void add(int[] from, int at, float[] target, int targetAt) {
        if ((size + 1) * Planes.STRIDE > planes.length) {
            planes = Arrays.copyOf(planes, 2 * planes.length);
            targets = Arrays.copyOf(targets, 2 * targets.length);
        }
        System.arraycopy(from, at, planes, size * Planes.STRIDE, Planes.STRIDE);
        System.arraycopy(target, targetAt, targets, size * Outcomes.COUNT, Outcomes.COUNT);
        size++;
    }

    /**
     * How many there are.
     *
     * @return number of samples
     */
    public int size() {
        return size;
    }

    /**
     * The positions, {@value Planes#STRIDE} ints each.
     *
     * @return the array itself, valid until the next addition
     */
    public int[] planes() {
        return planes;
    }

    /**
     * The targets, six floats each.
     *
     * @return the array itself, valid until the next addition
     */
    public float[] targets() {
        return targets;
    }
}
