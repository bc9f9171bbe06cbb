package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Layer;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.network.OnnxFile;
import org.pipwright.engine.network.ResidualNetwork;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.ranking.PlayRanker;
import org.pipwright.engine.ranking.RankedPlay;
import org.pipwright.engine.roll.Roll;

/** Commands with a file that holds one residual network for all positions. */
class DeepNetTest {
    private static final Model MODEL = new Model(network(7), Map.of("run", "random"));

    @TempDir
    Path folder;

    private String net;

    private static ResidualNetwork network(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<ResidualNetwork.Block> blocks = new ArrayList<>();
        for (int k = 0; k < 2; k++) {
            blocks.add(new ResidualNetwork.Block(layer(32, 32, random), layer(32, 32, random)));
        }
        Layer input = layer(FeatureSet.PLACES_1.inputs(), 32, random);
        return new ResidualNetwork(FeatureSet.PLACES_1, input, blocks, layer(32, 6, random)).halved();
    }

    private static Layer layer(int inputs, int outputs, SplittableRandom random) {
        return new Layer(inputs, outputs, numbers(inputs * outputs, random), numbers(outputs, random));
    }

    private static float[] numbers(int count, SplittableRandom random) {
        float[] numbers = new float[count];
        for (int i = 0; i < count; i++) {
            numbers[i] = (float) random.nextDouble(-0.3, 0.3);
        }
        return numbers;
    }

    @BeforeEach
    void write() throws IOException {
        Path file = folder.resolve("deep.safetensors");
        ModelFile.write(file, MODEL);
        net = file.toString();
    }

    @Test
    void describeSaysItsShape() {
        Run run = Run.of("net", "describe", net);
        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().contains("residual 32 x 2 on places-1, 12902 weights\n"), run.out());
        assertTrue(run.out().contains("features.deep   places-1\n"), run.out());
    }

    @Test
    void verifyReadsAllOfIt() throws IOException {
        String sum = ModelFile.read(Path.of(net)).notes().get(ModelFile.SHA256);
        assertEquals(
                new Run(0, "whole: residual 32 x 2, SHA-256 of the weights " + sum + "\n", ""),
                Run.of("net", "verify", net));
        byte[] bytes = Files.readAllBytes(Path.of(net));
        bytes[bytes.length - 1] ^= 1;
        Files.write(Path.of(net), bytes);
        Run damaged = Run.of("net", "verify", net);
        assertEquals(2, damaged.code());
        assertTrue(damaged.err().contains("its weights are damaged")
                && damaged.err().lines().count() == 1);
    }

    @Test
    void exportWritesTheSameBytes() throws IOException {
        Path copy = folder.resolve("copy.safetensors");
        assertEquals(0, Run.of("net", "export", net, copy.toString()).code());
        assertArrayEquals(Files.readAllBytes(Path.of(net)), Files.readAllBytes(copy));
    }

    /** What is in the file is checked with ONNX Runtime, by the benchmarks' tests. */
    @Test
    void exportWritesOneOnnxFile() throws IOException {
        Path target = folder.resolve("copy.onnx");
        Run run = Run.of("net", "export", net, target.toString());
        assertEquals(new Run(0, "wrote " + target + ": residual 32 x 2\n", ""), run);
        byte[] expected = OnnxFile.toBytes(
                (ResidualNetwork) MODEL.net(), ModelFile.read(Path.of(net)).notes());
        assertArrayEquals(expected, Files.readAllBytes(target));
    }

    @Test
    void exportWritesEachNetworkOfAQuickAndADeepNet() throws IOException {
        ModelFile.write(Path.of(net), MODEL.withQuick(TestNet.MODEL.net()));
        Run run = Run.of("net", "export", net, folder.resolve("all.onnx").toString());
        assertEquals(0, run.code(), run.err());
        for (String name : List.of("all.onnx", "all-quick-contact.onnx", "all-quick-race.onnx")) {
            assertTrue(Files.size(folder.resolve(name)) > 1000, name);
        }
        Run described = Run.of("net", "describe", net);
        assertTrue(described.out().contains("residual 32 x 2 on places-1, 12902 weights\n"), described.out());
        assertTrue(described.out().contains("quick contact     270-4-6, 1114 weights\n"), described.out());
    }

    @Test
    void rankSaysWhatTheNetworkSays() {
        Run run = Run.of("rank", "start", "--roll", "3-1", "--net", net, "--top", "3");
        assertEquals(0, run.code(), run.err());
        List<RankedPlay> expected =
                new PlayRanker(new NetworkEvaluator(MODEL), new Depth(0)).rank(Position.start(), Roll.of(3, 1));
        List<String> lines =
                run.out().lines().filter(line -> line.matches("[123]  .*")).toList();
        for (int i = 0; i < 3; i++) {
            RankedPlay play = expected.get(i);
            String equity = String.format("%+.4f", play.outcomes().equity());
            assertTrue(
                    lines.get(i).contains(play.play().toString())
                            && lines.get(i).contains(equity),
                    run.out());
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "rank start --roll 6-5 --lookahead 1",
                "rank start --roll 6-5 --cube 1",
                "odds start --lookahead 1",
                "cube start",
                "rollout start --trials 4 --truncate 3 --top 2",
                "rank 15@1/15@2 --roll 6-5"
            })
    void everyQuestionIsAnswered(String line) {
        List<String> args = new ArrayList<>(List.of(line.split(" ")));
        args.add("--net");
        args.add(net);
        Run run = Run.of(args.toArray(String[]::new));
        assertEquals(0, run.code(), run.err());
    }

    @Test
    void duelsDoNotDependOnThreads() {
        String[] results = new String[2];
        for (int threads = 1; threads <= 2; threads++) {
            Run run =
                    Run.of("duel", net, "builder", "--games", "6", "--seed", "5", "--threads", "" + threads, "--json");
            assertEquals(0, run.code(), run.err());
            results[threads - 1] = run.out().replaceAll("\"(seconds|threads)\" ?: ?[0-9.]+,?", "");
        }
        assertEquals(results[0], results[1]);
    }
}
