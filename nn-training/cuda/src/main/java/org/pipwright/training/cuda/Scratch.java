package org.pipwright.training.cuda;

/** Memory on the card that networks of one width share while they answer, for a number of rows at a time. */
final class Scratch {
    final int rows;
    final long features;
    final long hidden;
    final long normed;
    final long inner;
    final long logits;

    Scratch(int width, int rows) {
        this.rows = rows;
        features = Gpu.allocate(2L * rows * ResidualShape.INPUTS);
        hidden = Gpu.allocate(2L * rows * width);
        normed = Gpu.allocate(2L * rows * width);
        inner = Gpu.allocate(2L * rows * width);
        logits = Gpu.allocate(4L * rows * ResidualShape.OUTPUTS);
    }
}
