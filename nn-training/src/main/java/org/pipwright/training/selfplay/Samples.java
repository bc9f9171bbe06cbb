package org.pipwright.training.selfplay;

import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Arrays;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;

/** A growing list of samples: a position before the roll and the six chances a network should give for it. */
public final class Samples implements Serializable {
    private static final long serialVersionUID = 1;

    private transient int[] planes;
    private transient float[] targets;
    private transient int size;

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

    /** What is written in place of a list: no more than it holds. */
    private record Written(int[] planes, float[] targets) implements Serializable {
        private Object readResolve() {
            int size = targets.length / Outcomes.COUNT;
            Samples samples = new Samples(Math.max(1, size));
            System.arraycopy(planes, 0, samples.planes, 0, planes.length);
            System.arraycopy(targets, 0, samples.targets, 0, targets.length);
            samples.size = size;
            return samples;
        }
    }

    private Object writeReplace() {
        return new Written(Arrays.copyOf(planes, size * Planes.STRIDE), Arrays.copyOf(targets, size * Outcomes.COUNT));
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("samples are written as two arrays");
    }
}
