package org.pipwright.training.cuda;

import java.util.Arrays;

/** A growing list of lessons: positions of eight ints and six target chances each. Serves one thread. */
final class LessonList {
    private int[] planes = new int[8 * 256];
    private float[] targets = new float[6 * 256];
    private int size;

    int size() {
        return size;
    }

    int[] planes() {
        return planes;
    }

    float[] targets() {
        return targets;
    }

    void clear() {
        size = 0;
    }

    private void room(int more) {
        while ((size + more) * 8 > planes.length) {
            planes = Arrays.copyOf(planes, 2 * planes.length);
            targets = Arrays.copyOf(targets, 2 * targets.length);
        }
    }

    /** Adds a position whose target is a value and a correction to it. */
    void add(int[] position, int at, float[] value, int valueAt, float[] correction) {
        room(1);
        System.arraycopy(position, at, planes, 8 * size, 8);
        for (int k = 0; k < 6; k++) {
            targets[6 * size + k] = value[valueAt + k] + correction[k];
        }
        size++;
    }

    /** Adds a position with its target. */
    void add(int[] position, int at, float[] target, int targetAt) {
        room(1);
        System.arraycopy(position, at, planes, 8 * size, 8);
        System.arraycopy(target, targetAt, targets, 6 * size, 6);
        size++;
    }

    void addAll(LessonList other) {
        room(other.size);
        System.arraycopy(other.planes, 0, planes, 8 * size, 8 * other.size);
        System.arraycopy(other.targets, 0, targets, 6 * size, 6 * other.size);
        size += other.size;
    }
}
