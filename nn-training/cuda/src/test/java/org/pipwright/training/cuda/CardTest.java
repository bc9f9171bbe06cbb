package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.bytedeco.cuda.cudart.CUstream_st;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.network.Lanes;
import org.pipwright.models.ModelCatalog;

/** What the card computes against the plain twins. */
class CardTest {
    private static final int COUNT = 512;

    private CUstream_st stream;
    private Products products;

    @BeforeEach
    void takeTheCard() {
        CardForTests.use();
        stream = Gpu.stream();
        products = new Products(stream);
    }

    @ParameterizedTest
    @ValueSource(strings = {"128x1", "256x2", "384x3"})
    void chances(String text) {
        ResidualShape shape = ResidualShape.parse(text);
        int[] planes = RandomPositions.of(COUNT, 1);
        float[] weights = Weights.of(shape);
        CardNet net = new CardNet(shape, weights, 1024, stream, products);
        PlainNet plain = new PlainNet(shape, weights);
        float[] chances = new float[6 * COUNT];
        new Asker(300).ask(net, planes, COUNT, chances);
        double mean = 0;
        for (int i = 0; i < COUNT; i++) {
            double expected = PlainNet.equity(plain.chances(planes, 8 * i));
            mean += Math.abs(expected - Chances.equity(chances, 6 * i)) / COUNT;
        }
        assertTrue(mean < 0.005, "equity off by " + mean + " on average");
    }

    /** In single precision, so that only the order of sums differs. */
    @Test
    void chancesOfNetsWithPairs() {
        Lanes lanes = (Lanes) ModelCatalog.shipped().load("fifth").net();
        int[] planes = RandomPositions.of(COUNT, 1);
        PlainLayers plain = new PlainLayers(lanes);
        float[] chances = new float[6 * COUNT];
        new Asker(300).ask(new CardLayers(lanes, 256, stream), planes, COUNT, chances);
        float[] expected = new float[6];
        for (int i = 0; i < COUNT; i++) {
            plain.evaluate(planes, 8 * i, expected, 0);
            for (int k = 0; k < 6; k++) {
                assertEquals(expected[k], chances[6 * i + k], 1e-5f, "position " + i);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"128x1", "256x2", "384x3"})
    void lossAndGradientAndLearning(String text) {
        ResidualShape shape = ResidualShape.parse(text);
        int[] planes = RandomPositions.of(COUNT, 1);
        float[] targets = Weights.targets(planes, COUNT);
        float[] weights = Weights.of(shape);
        CardNet net = new CardNet(shape, weights, 1024, stream, products);
        LessonMemory memory = new LessonMemory(COUNT, 200, stream);
        memory.add(planes, targets, COUNT);
        CardLearner learner = new CardLearner(net, new LearnerSettings(COUNT, 0.9f, 0.99f, 0.01f, 1f, 0.999f));
        long index = inOrder();
        Lessons lessons = new Lessons(memory.planes, index, false, memory.targets, index);
        learner.derivatives(lessons);
        float[] gradient = learner.gradient();
        double[] expected = new double[weights.length];
        PlainNet plain = new PlainNet(shape, weights);
        double loss = 0;
        for (int i = 0; i < COUNT; i++) {
            plain.addGradient(planes, 8 * i, targets, 6 * i, expected);
            loss += plain.loss(planes, 8 * i, targets, 6 * i) / COUNT;
        }
        double[] losses = learner.losses();
        assertEquals(loss, losses[0] + losses[1] * losses[1] / 2, 0.01);
        int square = shape.width() * shape.width();
        near(gradient, expected, 0, ResidualShape.INPUTS * shape.width());
        near(gradient, expected, shape.inputBias(), shape.width());
        for (int k = 0; k < shape.blocks(); k++) {
            near(gradient, expected, shape.a(k), square);
            near(gradient, expected, shape.aBias(k), shape.width());
            near(gradient, expected, shape.b(k), square);
            near(gradient, expected, shape.bBias(k), shape.width());
        }
        near(gradient, expected, shape.output(), shape.width() * ResidualShape.OUTPUTS);
        near(gradient, expected, shape.outputBias(), ResidualShape.OUTPUTS);
        for (int k = 0; k < 300; k++) {
            learner.learn(lessons, 0.001f);
        }
        learner.losses();
        learner.learn(lessons, 0.001f);
        double error = learner.losses()[1];
        assertTrue(error < 0.3 * losses[1], "error of equity " + losses[1] + ", then " + error);
    }

    /** The numbers 0, 1 and so on, on the card. */
    private long inOrder() {
        long index = Gpu.allocate(4L * COUNT);
        ByteBuffer host = Gpu.pinned(4L * COUNT);
        for (int i = 0; i < COUNT; i++) {
            host.putInt(4 * i, i);
        }
        Gpu.toCard(host, index, 4L * COUNT, stream);
        Gpu.await(stream);
        return index;
    }

    /** Products of two-byte numbers: the difference is a small share of the gradient's length. */
    private static void near(float[] gradient, double[] expected, int at, int length) {
        double difference = 0;
        double size = 0;
        for (int i = at; i < at + length; i++) {
            difference += Math.pow(gradient[i] - expected[i], 2);
            size += Math.pow(expected[i], 2);
        }
        assertTrue(Math.sqrt(difference / size) < 0.06, "off by " + Math.sqrt(difference / size) + " at " + at);
    }

    @Test
    void lookahead() {
        Recipe recipe = Recipe.of(CardPreset.parse(
                "minutes = 1\ndeep = 256x2\nquick = 128x1\ngames = 200\nmemory = 1000\nkeep.margin = 6\n"
                        + "deep.rows = 4096\nquick.rows = 4096\n"));
        CudaAccelerator card = new CudaAccelerator(recipe);
        PlainNet[] plain = new PlainNet[2];
        for (int net = 0; net < 2; net++) {
            ResidualShape shape = recipe.shapes().get(net);
            card.add(shape, Weights.of(shape));
            plain[net] = new PlainNet(shape, Weights.of(shape));
        }
        LaneJudge lane = card.lane();
        int[] planes = RandomPositions.of(200, 5);
        for (int i = 0; i < 200; i++) {
            lane.plays().rolls.putInt(4 * i, i % 21);
        }
        lane.plays().generate(planes);
        lane.upload();
        lane.judge();
        card.await();
        PlainLookahead twin = new PlainLookahead(plain[0], plain[1]);
        float[] out = new float[6];
        double mean = 0;
        for (int i = 0; i < 12; i++) {
            lane.plays().expected(i, out, 0);
            double expected = PlainNet.equity(twin.expected(planes, 8 * i, 6, PlaysBatch.SLOTS));
            mean += Math.abs(expected - Chances.equity(out, 0)) / 12;
        }
        assertTrue(mean < 0.01, "equity off by " + mean + " on average");
    }

    /** The recipe from end to end, and on from where it was stopped. */
    @Test
    void wholeRun(@TempDir Path folder) throws Exception {
        Path settings = Files.writeString(
                folder.resolve("settings"),
                "minutes = 0.5\ndeep = 256x2\nquick = 128x1\npupils = 128x2\ncopy.seconds = 5\ngames = 256\n"
                        + "memory = 100000\nbatch = 512\nfinal.pairs = 500\nevaluation.pairs = 200\nrival = fifth\n");
        Path run = folder.resolve("run");
        List<String> said = java.util.Collections.synchronizedList(new java.util.ArrayList<>());
        long end = System.nanoTime() + 10_000_000_000L;
        new TrainerRun(
                        ToyRun.request(run, settings, false),
                        CudaTrainer.DEVICE,
                        CudaAccelerator::new,
                        System::nanoTime,
                        said::add,
                        () -> System.nanoTime() > end)
                .train();
        new TrainerRun(
                        ToyRun.request(run, null, true),
                        CudaTrainer.DEVICE,
                        CudaAccelerator::new,
                        System::nanoTime,
                        said::add,
                        () -> false)
                .train();
        List<String> lines = Files.readAllLines(run.resolve("metrics.csv"));
        Figures last = Figures.ofCsv(lines.get(lines.size() - 1), 3);
        assertTrue(last.nets().get(0).points() > -0.5, last.toString());
    }
}
