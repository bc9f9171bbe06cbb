package org.pipwright.training.cuda;

import java.nio.ByteBuffer;

/**
 * Teaches a network on the card, a batch at a time: cross-entropy with the six target chances plus half the squared error
 * of equity; AdamW (Loshchilov and Hutter, Decoupled weight decay regularization, ICLR 2019) with the gradient clipped by
 * its norm, and a running average of the weights.
 */
final class CardLearner {
    private final CardNet net;
    private final LearnerSettings settings;
    private final int batch;
    private final long gradient;
    private final long features;
    private final long hidden;
    private final long[] normed;
    private final long[] scales;
    private final long[] inner;
    private final long logits;
    private final long delta;
    private final long hiddenDelta;
    private final long narrowDelta;
    private final long innerDelta;
    private final long normedDelta;
    private final long sums;
    private final ByteBuffer hostSums = Gpu.pinned(16);

    CardLearner(CardNet net, LearnerSettings settings) {
        this.net = net;
        this.settings = settings;
        batch = settings.batch();
        int width = net.shape.width();
        int blocks = net.shape.blocks();
        gradient = Gpu.allocate(4L * net.shape.size());
        features = Gpu.allocate(2L * batch * ResidualShape.INPUTS);
        hidden = Gpu.allocate(4L * batch * width);
        normed = new long[blocks + 1];
        scales = new long[blocks + 1];
        inner = new long[blocks];
        for (int k = 0; k <= blocks; k++) {
            normed[k] = Gpu.allocate(2L * batch * width);
            scales[k] = Gpu.allocate(4L * batch);
        }
        for (int k = 0; k < blocks; k++) {
            inner[k] = Gpu.allocate(2L * batch * width);
        }
        logits = Gpu.allocate(4L * batch * ResidualShape.OUTPUTS);
        delta = Gpu.allocate(2L * batch * ResidualShape.OUTPUTS);
        hiddenDelta = Gpu.allocate(4L * batch * width);
        narrowDelta = Gpu.allocate(2L * batch * width);
        innerDelta = Gpu.allocate(2L * batch * width);
        normedDelta = Gpu.allocate(2L * batch * width);
        // Cross-entropy, squared error and samples since they were last read; then the squared length of the gradient.
        sums = Gpu.allocate(16);
        Gpu.clear(sums, 16, net.stream);
    }

    /**
     * One step.
     *
     * @param lessons the positions and target chances of one batch, on the card
     * @param rate the learning rate
     */
    void learn(Lessons lessons, float rate) {
        derivatives(lessons);
        step(rate);
    }

    /** Computes the gradient of a batch's loss, as a sum over the batch. */
    void derivatives(Lessons lessons) {
        forward(lessons);
        ResidualShape shape = net.shape;
        int width = shape.width();
        Gpu.clear(gradient, 4L * shape.size(), net.stream);
        net.kernels
                .with(logits)
                .with(CardNet.at(net.weights, shape.outputBias()))
                .with(lessons.planes())
                .with(lessons.index())
                .with(lessons.swapped() ? 1 : 0)
                .with(lessons.targets())
                .with(lessons.targetIndex())
                .with(batch)
                .with(delta)
                .with(CardNet.at(gradient, shape.outputBias()))
                .with(sums)
                .each("loss", batch);
        net.products.gradient(
                normed[shape.blocks()],
                delta,
                CardNet.at(gradient, shape.output()),
                batch,
                width,
                ResidualShape.OUTPUTS);
        net.products.back(
                delta,
                CardNet.narrowAt(net.narrowed, shape.output()),
                normedDelta,
                batch,
                width,
                ResidualShape.OUTPUTS);
        normBack(shape.blocks(), true);
        for (int k = shape.blocks() - 1; k >= 0; k--) {
            backThrough(k);
        }
        columns(narrowDelta, 0, shape.inputBias());
        net.products.gradient(features, narrowDelta, gradient, batch, ResidualShape.INPUTS, width);
    }

    private void forward(Lessons lessons) {
        ResidualShape shape = net.shape;
        int width = shape.width();
        net.kernels
                .with(lessons.planes())
                .with(lessons.index())
                .with(lessons.swapped() ? 1 : 0)
                .with(batch)
                .with(batch)
                .with(0)
                .with(features)
                .warps("encode", batch);
        net.products.multiply(
                features,
                net.narrowed,
                hidden,
                batch,
                ResidualShape.INPUTS,
                width,
                false,
                Products.Kind.BFLOAT_TO_FLOAT);
        for (int k = 0; k < shape.blocks(); k++) {
            norm(k);
            net.products.rectified(
                    normed[k],
                    CardNet.narrowAt(net.narrowed, shape.a(k)),
                    CardNet.narrowAt(net.narrowed, shape.aBias(k)),
                    inner[k],
                    batch,
                    width,
                    Products.Kind.BFLOAT);
            net.products.multiply(
                    inner[k],
                    CardNet.narrowAt(net.narrowed, shape.b(k)),
                    hidden,
                    batch,
                    width,
                    width,
                    true,
                    Products.Kind.BFLOAT_TO_FLOAT);
        }
        norm(shape.blocks());
        net.products.multiply(
                normed[shape.blocks()],
                CardNet.narrowAt(net.narrowed, shape.output()),
                logits,
                batch,
                width,
                ResidualShape.OUTPUTS,
                false,
                Products.Kind.BFLOAT_TO_FLOAT);
    }

    private void norm(int level) {
        net.kernels
                .with(hidden)
                .with(CardNet.at(net.summedBiases, (long) level * net.shape.width()))
                .with(batch)
                .with(normed[level])
                .with(scales[level])
                .warps("layerNorm", batch);
    }

    private void normBack(int level, boolean first) {
        net.kernels
                .with(normedDelta)
                .with(normed[level])
                .with(scales[level])
                .with(batch)
                .with(first ? 1 : 0)
                .with(hiddenDelta)
                .with(narrowDelta)
                .warps("layerNormBack", batch);
    }

    private void backThrough(int k) {
        ResidualShape shape = net.shape;
        int width = shape.width();
        columns(narrowDelta, 0, shape.bBias(k));
        net.products.gradient(inner[k], narrowDelta, CardNet.at(gradient, shape.b(k)), batch, width, width);
        net.products.back(narrowDelta, CardNet.narrowAt(net.narrowed, shape.b(k)), innerDelta, batch, width, width);
        columns(innerDelta, inner[k], shape.aBias(k));
        net.products.gradient(normed[k], innerDelta, CardNet.at(gradient, shape.a(k)), batch, width, width);
        net.products.back(innerDelta, CardNet.narrowAt(net.narrowed, shape.a(k)), normedDelta, batch, width, width);
        normBack(k, false);
    }

    /** Column sums of a derivative go to the gradient of a bias; where a rectifier was closed it is set to 0 first. */
    private void columns(long derivative, long rectified, int bias) {
        net.kernels
                .with(derivative)
                .with(rectified)
                .with(batch)
                .with(CardNet.at(gradient, bias))
                .start("columns", (net.shape.width() + 255) / 256, (batch + 63) / 64, 128);
    }

    private void step(float rate) {
        int size = net.shape.size();
        long length = sums + 12;
        Gpu.clear(length, 4, net.stream);
        net.kernels.with(gradient).with(size).with(length).start("squares", 264, 1, 256);
        long step = net.steps() + 1;
        net.steps(step);
        double correct1 = 1 - Math.pow(settings.beta1(), step);
        double correct2 = 1 - Math.pow(settings.beta2(), step);
        // An average of few steps would hold on to the random weights: it starts as a plain mean.
        float keep = (float) Math.min(settings.average(), step / (step + 10.0));
        net.kernels
                .with(net.weights)
                .with(net.firstMoments)
                .with(net.secondMoments)
                .with(net.average)
                .with(gradient)
                .with(net.narrowed)
                .with(size)
                .with(length)
                .with(1f / batch)
                .with(settings.clip())
                .with(rate)
                .with(settings.decay())
                .with(settings.beta1())
                .with(settings.beta2())
                .with((float) correct1)
                .with((float) correct2)
                .with(keep)
                .each("adam", size);
        net.addUp(net.weights, net.summedBiases);
    }

    /** The gradient as it was last computed, from the card. */
    float[] gradient() {
        return net.read(gradient);
    }

    /** Means since the last call: cross-entropy in nats, root of the mean squared error of equity in points. */
    double[] losses() {
        Gpu.fromCard(sums, hostSums, 16, net.stream);
        Gpu.await(net.stream);
        float samples = hostSums.getFloat(8);
        double entropy = hostSums.getFloat(0) / samples;
        double error = Math.sqrt(hostSums.getFloat(4) / samples);
        Gpu.clear(sums, 12, net.stream);
        return new double[] {entropy, error};
    }
}
