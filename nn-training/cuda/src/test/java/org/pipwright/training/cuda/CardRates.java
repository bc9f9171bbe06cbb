package org.pipwright.training.cuda;

import java.nio.ByteBuffer;
import java.util.List;
import java.util.Locale;
import org.bytedeco.cuda.cudart.CUstream_st;

/** Measures how fast the card answers and learns, and how fast this machine makes plays; no test. */
final class CardRates {
    private static final int POSITIONS = 460_000;
    private static final int REPEATS = 5;

    private final CUstream_st stream = Gpu.stream();
    private final Products products = new Products(stream);

    private CardRates() {}

    public static void main(String[] words) {
        Gpu.load();
        Gpu.use();
        System.out.println(Gpu.description());
        CardRates rates = new CardRates();
        for (String shape : List.of("1024x6", "768x4", "512x4", "256x1")) {
            rates.answering(ResidualShape.parse(shape));
            rates.learning(ResidualShape.parse(shape));
        }
        rates.generating();
        System.exit(0);
    }

    private static double seconds(Runnable work, CUstream_st stream) {
        work.run();
        Gpu.await(stream);
        long began = System.nanoTime();
        for (int k = 0; k < REPEATS; k++) {
            work.run();
        }
        Gpu.await(stream);
        return (System.nanoTime() - began) / 1e9 / REPEATS;
    }

    private static void print(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, format, values));
    }

    private void answering(ResidualShape shape) {
        CardNet net = new CardNet(shape, Weights.of(shape), 8192, stream, products);
        int some = 10_000;
        ByteBuffer host = Gpu.pinned(32L * some);
        host.asIntBuffer().put(RandomPositions.of(some, 2));
        long card = Gpu.allocate(32L * POSITIONS);
        for (int from = 0; from < POSITIONS; from += some) {
            Gpu.toCard(host, card + 32L * from, 32L * some, stream);
        }
        long equity = Gpu.allocate(4L * POSITIONS);
        double seconds = seconds(() -> net.answer(card, 0, true, POSITIONS, 0, equity), stream);
        print("%s: %.1f M positions a second", shape, POSITIONS / seconds / 1e6);
        Gpu.free(card);
        Gpu.free(equity);
    }

    private void learning(ResidualShape shape) {
        int batch = 8192;
        CardNet net = new CardNet(shape, Weights.of(shape), 256, stream, products);
        CardLearner learner = new CardLearner(net, new LearnerSettings(batch, 0.9f, 0.99f, 0.01f, 1f, 0.999f));
        LessonMemory memory = new LessonMemory(batch, batch, stream);
        int[] planes = RandomPositions.of(batch, 8);
        memory.add(planes, Weights.targets(planes, batch), batch);
        long index = Gpu.allocate(4L * batch);
        net.kernels
                .with(5L)
                .with(batch)
                .with(batch)
                .with(0L)
                .with(0L)
                .with(index)
                .each("draw", batch);
        Lessons lessons = new Lessons(memory.planes, index, false, memory.targets, index);
        double seconds = seconds(
                () -> {
                    for (int k = 0; k < 10; k++) {
                        learner.learn(lessons, 0.0001f);
                    }
                },
                stream);
        print("%s: learns %.2f M samples a second", shape, 10 * batch / seconds / 1e6);
    }

    private void generating() {
        PlaysBatch batch = new PlaysBatch(8192, Gpu::pinned);
        int[] planes = RandomPositions.of(8192, 2);
        double seconds = seconds(() -> batch.generate(planes), stream);
        print("plays of 8192 positions: %.1f ms, %.1f results each", 1e3 * seconds, batch.size() / 8192.0);
    }
}
