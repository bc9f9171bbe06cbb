package org.pipwright.training.cuda;

import java.util.Arrays;

/**
 * The numbers of some lessons that are not 0: lesson by lesson, and turned, input by input. Serves one thread; arrays are
 * open to its hot loops.
 */
final class SparseRows {
    /** Lesson l's numbers lie from {@code starts[l]} to {@code starts[l + 1]}: which inputs, in order, and their values. */
    final int[] starts;

    final int[] inputs;
    final float[] values;

    /** Input i's lie from {@code turnedStarts[i]} to {@code turnedStarts[i + 1]}: whose, in order, and their values. */
    final int[] turnedStarts;

    final int[] lessons;
    final float[] turnedValues;
    private int filled;

    SparseRows(int maxLessons, int width) {
        starts = new int[maxLessons + 1];
        inputs = new int[maxLessons * width];
        values = new float[maxLessons * width];
        turnedStarts = new int[width + 1];
        lessons = new int[maxLessons * width];
        turnedValues = new float[maxLessons * width];
    }

    void clear() {
        filled = 0;
    }

    /** Adds a number of the lesson that is being filled. */
    void add(int input, float value) {
        if (value != 0) {
            inputs[filled] = input;
            values[filled++] = value;
        }
    }

    /** All numbers of a lesson have been added. */
    void end(int lesson) {
        starts[lesson + 1] = filled;
    }

    /** Fills the turned arrays with these numbers of the first lessons, which lie as {@code values} do. */
    void turn(int count, float[] numbers) {
        Arrays.fill(turnedStarts, 0);
        for (int r = 0; r < starts[count]; r++) {
            turnedStarts[inputs[r] + 1]++;
        }
        for (int i = 1; i < turnedStarts.length; i++) {
            turnedStarts[i] += turnedStarts[i - 1];
        }
        for (int lesson = 0; lesson < count; lesson++) {
            for (int r = starts[lesson]; r < starts[lesson + 1]; r++) {
                int at = turnedStarts[inputs[r]]++;
                lessons[at] = lesson;
                turnedValues[at] = numbers[r];
            }
        }
        // Each start has moved to the next one's place.
        System.arraycopy(turnedStarts, 0, turnedStarts, 1, turnedStarts.length - 1);
        turnedStarts[0] = 0;
    }
}
