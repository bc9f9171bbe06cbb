package org.pipwright.engine.network;

/** Numbers in rows and columns, row by row in one array. */
final class Matrices {
    private Matrices() {}

    /** Rows become columns. */
    static float[] turned(float[] numbers, int rows, int columns) {
        float[] turned = new float[numbers.length];
        for (int r = 0; r < rows; r++) {
            for (int c = 0; c < columns; c++) {
                turned[c * rows + r] = numbers[r * columns + c];
            }
        }
        return turned;
    }
}
