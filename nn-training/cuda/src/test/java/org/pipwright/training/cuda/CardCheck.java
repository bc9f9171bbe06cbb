package org.pipwright.training.cuda;

import java.util.SplittableRandom;
import org.bytedeco.cuda.cudart.CUstream_st;
import org.pipwright.engine.evaluation.Chances;

/** Holds what the card computes against the plain twins, and measures its rates. */
final class CardCheck {
    private CardCheck() {}

    public static void main(String[] words) {
        Gpu.use();
        CUstream_st stream = Gpu.stream();
        Products products = new Products(stream);
        for (String shape : new String[] {"128x1", "256x2", "384x3"}) {
            check(ResidualShape.parse(shape), stream, products);
        }
        lookahead(stream, products);
        for (int rows : new int[] {4096, 8192, 16384}) {
            rate("1024x6", rows, 460_000, stream, products);
        }
        rate("768x4", 8192, 460_000, stream, products);
        for (int rows : new int[] {8192, 16384, 32768, 65536}) {
            rate("256x1", rows, 3_200_000, stream, products);
        }
        rate("128x1", 32768, 3_200_000, stream, products);
        learnRate("1024x6", stream, products);
        learnRate("768x4", stream, products);
        learnRate("256x2", stream, products);
        generating();
        System.exit(0);
    }

    private static void require(boolean holds) {
        if (!holds) {
            System.out.println("WRONG");
            System.exit(3);
        }
    }

    private static float[] random(int count, long seed, double least, double most) {
        SplittableRandom random = new SplittableRandom(seed);
        float[] values = new float[count];
        for (int i = 0; i < count; i++) {
            values[i] = (float) (least + (most - least) * random.nextDouble());
        }
        return values;
    }

    private static float[] weights(ResidualShape shape) {
        float[] weights = shape.initial(new SplittableRandom(3));
        float[] more = random(weights.length, 4, -0.05, 0.05);
        for (int i = 0; i < weights.length; i++) {
            weights[i] += more[i];
        }
        for (int i = 0; i < shape.width(); i++) {
            weights[shape.output() + i * 8 + 6] = 0;
            weights[shape.output() + i * 8 + 7] = 0;
        }
        return weights;
    }

    private static void check(ResidualShape shape, CUstream_st stream, Products products) {
        int count = 512;
        int[] planes = RandomPositions.of(count, 1);
        float[] weights = weights(shape);
        CardNet net = new CardNet(shape, weights, 1024, stream, products);
        PlainNet plain = new PlainNet(shape, weights);
        float[] chances = new float[6 * count];
        new Asker(300).ask(net, planes, count, chances);
        double most = 0;
        double mean = 0;
        for (int i = 0; i < count; i++) {
            double[] expected = plain.chances(planes, 8 * i);
            double error = Math.abs(PlainNet.equity(expected) - Chances.equity(chances, 6 * i));
            most = Math.max(most, error);
            mean += error / count;
        }
        require(mean < 0.005);
        System.out.printf("%s chances: equity off by %.5f on average, %.5f at most%n", shape, mean, most);
        LessonMemory memory = new LessonMemory(count, 200, stream);
        float[] targets = new float[6 * count];
        float[] raw = random(6 * count, 9, 0.01, 1);
        for (int i = 0; i < count; i++) {
            int possible = org.pipwright.engine.rules.PossibleOutcomes.of(planes, 8 * i);
            float sum = 0;
            for (int k = 0; k < 6; k++) {
                targets[6 * i + k] = (possible >> k & 1) != 0 ? raw[6 * i + k] : 0;
                sum += targets[6 * i + k];
            }
            for (int k = 0; k < 6; k++) {
                targets[6 * i + k] /= sum;
            }
        }
        memory.add(planes, targets, count);
        LearnerSettings settings = new LearnerSettings(count, 0.9f, 0.99f, 0.01f, 1f, 0.999f);
        CardLearner learner = new CardLearner(net, settings);
        long index = Gpu.allocate(4L * count);
        java.nio.ByteBuffer host = Gpu.pinned(4L * count);
        for (int i = 0; i < count; i++) {
            host.putInt(4 * i, i);
        }
        Gpu.toCard(host, index, 4L * count, stream);
        Lessons lessons = new Lessons(memory.planes, index, false, memory.targets, index);
        learner.derivatives(lessons);
        float[] gradient = learner.gradient();
        double[] expected = new double[weights.length];
        double loss = 0;
        for (int i = 0; i < count; i++) {
            plain.addGradient(planes, 8 * i, targets, 6 * i, expected);
            loss += plain.loss(planes, 8 * i, targets, 6 * i) / count;
        }
        double[] losses = learner.losses();
        System.out.printf(
                "%s loss: %.5f, plain %.5f%n", shape, losses[0] + losses[1] * losses[1] / 2, loss);
        part("input", gradient, expected, 0, ResidualShape.INPUTS * shape.width());
        part("input bias", gradient, expected, shape.inputBias(), shape.width());
        for (int k = 0; k < shape.blocks(); k++) {
            part("a" + k, gradient, expected, shape.a(k), shape.width() * shape.width());
            part("a bias" + k, gradient, expected, shape.aBias(k), shape.width());
            part("b" + k, gradient, expected, shape.b(k), shape.width() * shape.width());
            part("b bias" + k, gradient, expected, shape.bBias(k), shape.width());
        }
        part("output", gradient, expected, shape.output(), shape.width() * 8);
        part("output bias", gradient, expected, shape.outputBias(), 8);
        for (int k = 0; k < 300; k++) {
            learner.learn(lessons, 0.001f);
            if (k % 100 == 0 || k == 299) {
                losses = learner.losses();
                System.out.printf("%s step %d: %.4f %.4f%n", shape, k, losses[0], losses[1]);
            }
        }
    }

    /** Size of the difference as a share of the size of the gradient. */
    private static void part(String name, float[] gradient, double[] expected, int at, int length) {
        double difference = 0;
        double size = 0;
        for (int i = at; i < at + length; i++) {
            difference += Math.pow(gradient[i] - expected[i], 2);
            size += Math.pow(expected[i], 2);
        }
        require(Math.sqrt(difference / size) < 0.06);
        System.out.printf("  gradient of %s: %.3e, off by %.4f of it%n", name, Math.sqrt(size), Math.sqrt(difference / size));
    }

    private static void lookahead(CUstream_st stream, Products products) {
        int count = 200;
        int[] planes = RandomPositions.of(count, 5);
        ResidualShape deepShape = new ResidualShape(256, 2);
        ResidualShape quickShape = new ResidualShape(128, 1);
        CardNet deep = new CardNet(deepShape, weights(deepShape), 4096, stream, products);
        CardNet quick = new CardNet(quickShape, weights(quickShape), 4096, stream, products);
        PlaysBatch batch = new PlaysBatch(count);
        for (int i = 0; i < count; i++) {
            batch.rolls.putInt(4 * i, i % 21);
        }
        batch.generate(planes);
        batch.upload();
        Lookahead wide = new Lookahead(deep, quick, 100f, count);
        wide.judge(batch);
        Gpu.await(stream);
        System.out.printf("lookahead: %d results, kept %d%n", batch.size(), wide.lastKept());
        PlainLookahead plain = new PlainLookahead(new PlainNet(deepShape, weights(deepShape)), new PlainNet(quickShape, weights(quickShape)));
        double most = 0;
        double mean = 0;
        float[] out = new float[6];
        for (int i = 0; i < 12; i++) {
            double[] expected = plain.expected(planes, 8 * i, 100, PlaysBatch.SLOTS);
            batch.expected(i, out, 0);
            double error = Math.abs(PlainNet.equity(expected) - Chances.equity(out, 0));
            most = Math.max(most, error);
            mean += error / 12;
        }
        require(mean < 0.01);
        System.out.printf("lookahead: equity off by %.5f on average, %.5f at most%n", mean, most);
        System.out.printf("kept of the thrown roll: %d, first's equity %.4f%n", batch.kept(0), first(batch));
    }

    private static double first(PlaysBatch batch) {
        float[] chances = new float[6];
        batch.chances(0, 0, chances, 0);
        return Chances.equity(chances, 0);
    }

    private static void rate(String shape, int rows, int count, CUstream_st stream, Products products) {
        CardNet net = new CardNet(ResidualShape.parse(shape), weights(ResidualShape.parse(shape)), rows, stream, products);
        int[] planes = RandomPositions.of(10_000, 2);
        long card = Gpu.allocate(32L * count);
        java.nio.ByteBuffer host = Gpu.pinned(32L * 10_000);
        host.asIntBuffer().put(planes);
        for (int from = 0; from < count; from += 10_000) {
            Gpu.toCard(host, card + 32L * from, 32L * Math.min(10_000, count - from), stream);
        }
        long equity = Gpu.allocate(4L * count);
        net.answer(card, 0, true, count, 0, equity);
        Gpu.await(stream);
        long began = System.nanoTime();
        int repeats = 5;
        for (int k = 0; k < repeats; k++) {
            net.answer(card, 0, true, count, 0, equity);
        }
        Gpu.await(stream);
        double seconds = (System.nanoTime() - began) / 1e9 / repeats;
        System.out.printf(
                "%s by %d rows: %.2f M positions a second, %.0f TFLOP/s%n",
                shape, rows, count / seconds / 1e6, 2 * net.shape.millions() * 1e6 * count / seconds / 1e12);
        Gpu.free(card);
        Gpu.free(equity);
    }

    private static void learnRate(String shape, CUstream_st stream, Products products) {
        ResidualShape residual = ResidualShape.parse(shape);
        CardNet net = new CardNet(residual, weights(residual), 256, stream, products);
        CardLearner learner = new CardLearner(net, LearnerSettings.USUAL);
        int count = 8192;
        LessonMemory memory = new LessonMemory(count, count, stream);
        float[] targets = new float[6 * count];
        for (int i = 0; i < count; i++) {
            targets[6 * i] = 0.5f;
            targets[6 * i + 3] = 0.5f;
        }
        memory.add(RandomPositions.of(count, 8), targets, count);
        long index = Gpu.allocate(4L * count);
        Gpu.clear(index, 4L * count, stream);
        net.kernels.with(5L).with(count).with(count).with(0L).with(0L).with(index).each("draw", count);
        Lessons lessons = new Lessons(memory.planes, index, false, memory.targets, index);
        for (int k = 0; k < 5; k++) {
            learner.learn(lessons, 0.0001f);
        }
        Gpu.await(stream);
        long began = System.nanoTime();
        for (int k = 0; k < 50; k++) {
            learner.learn(lessons, 0.0001f);
        }
        Gpu.await(stream);
        double seconds = (System.nanoTime() - began) / 1e9 / 50;
        System.out.printf(
                "%s learns %.2f M samples a second, %.2f ms a step, %.0f TFLOP/s%n",
                shape, count / seconds / 1e6, 1e3 * seconds, 6 * residual.millions() * 1e6 * count / seconds / 1e12);
    }

    private static void generating() {
        int count = 8192;
        PlaysBatch batch = new PlaysBatch(count);
        int[] planes = RandomPositions.of(count, 2);
        for (int k = 0; k < 20; k++) {
            long began = System.nanoTime();
            batch.generate(planes);
            long middle = System.nanoTime();
            batch.upload();
            long end = System.nanoTime();
            if (k % 5 == 4) {
                System.out.printf(
                        "generating %d positions: %.1f ms, %.1f results each, upload %.1f ms%n",
                        count, (middle - began) / 1e6, batch.size() * 1.0 / count, (end - middle) / 1e6);
            }
        }
    }
}
