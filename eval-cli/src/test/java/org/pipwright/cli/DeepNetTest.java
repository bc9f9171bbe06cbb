package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.judge.PlayRanker;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.network.Layer;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.network.OnnxFile;
import org.pipwright.engine.network.ResidualNetwork;
import org.pipwright.engine.position.Position;
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

    private String quickNet(Map<String, String> notes) throws IOException {
        Path quick = folder.resolve("quick.safetensors");
        ModelFile.write(quick, TestNet.MODEL.withNotes(notes));
        return quick.toString();
    }

    @Test
    void joinWritesBothNetsAndWhatIsKnownOfThem() throws IOException {
        String both = folder.resolve("both.safetensors").toString();
        String quick = quickNet(Map.of("run", "small", "licence", "free"));
        Run run = Run.of("net", "join", quick, net, "--out", both);
        String shape = "residual 32 x 2, quick " + TestNet.MODEL.shape();
        assertEquals(new Run(0, "wrote " + both + ": " + shape + "\n", ""), run);
        Map<String, String> notes = Map.of("run", "random", "quick.run", "small", "quick.licence", "free");
        assertArrayEquals(
                ModelFile.toBytes(MODEL.withNotes(notes).withQuick(TestNet.MODEL.net())),
                Files.readAllBytes(Path.of(both)));
        Run verified = Run.of("net", "verify", both);
        assertTrue(verified.out().startsWith("whole: " + shape + ", SHA-256"), verified.out() + verified.err());
        // Joined once more, the quick net that was there before is gone, and so is what was known of it.
        String again = folder.resolve("again.safetensors").toString();
        quick = quickNet(Map.of("run", "other"));
        assertEquals(0, Run.of("net", "join", quick, both, "--out", again).code());
        Map<String, String> known = ModelFile.read(Path.of(again)).notes();
        assertEquals("other", known.get("quick.run"));
        assertEquals("random", known.get("run"));
        assertEquals(null, known.get("quick.licence"));
    }

    @Test
    void joinRoundsBothToHalfPrecision() throws IOException {
        Path both = folder.resolve("both.safetensors");
        Run run = Run.of("net", "join", quickNet(Map.of()), net, "--out", both.toString(), "--half");
        assertEquals(0, run.code(), run.err());
        Model joined = ModelFile.read(both);
        assertArrayEquals(
                ModelFile.toBytes(new Model(MODEL.net().halved(), Map.of("run", "random"))
                        .withQuick(TestNet.MODEL.net().halved())),
                Files.readAllBytes(both));
        int weights = joined.net().weights() + joined.quick().orElseThrow().weights();
        assertTrue(Files.size(both) < 2 * weights + 4000, "two bytes a weight: " + Files.size(both));
    }

    @Test
    void joinSaysWhatIsWrong() throws IOException {
        String quick = quickNet(Map.of());
        String out = folder.resolve("out.safetensors").toString();
        String equal = folder.resolve("equal.safetensors").toString();
        ModelFile.write(Path.of(equal), new Model(network(8), Map.of()));
        requireRefused("it is quick itself", "net", "join", net, quick, "--out", out);
        requireRefused("name them the other way round", "net", "join", equal, net, "--out", out);
        requireRefused("let the name end in .safetensors", "net", "join", quick, net, "--out", out + ".svg");
        requireRefused("are the same file", "net", "join", quick, net, "--out", quick);
        requireRefused("no model file", "net", "join", quick, net + "x", "--out", out);
        assertTrue(Files.notExists(Path.of(out)));
        byte[] joined = ModelFile.toBytes(MODEL.withQuick(TestNet.MODEL.net()));
        Files.write(Path.of(out), Arrays.copyOf(joined, joined.length - 900));
        requireRefused("cut off", "net", "verify", out);
        requireRefused("cut off", "rank", "start", "--roll", "3-1", "--net", out);
    }

    private static void requireRefused(String part, String... words) {
        Run run = Run.of(words);
        assertEquals(2, run.code(), run.out());
        assertTrue(run.err().contains(part) && run.err().lines().count() == 1, run.err());
    }

    /** A ranking shows every play as the deep net judges it, whatever quick net stands before. */
    @ParameterizedTest
    @ValueSource(strings = {"", " --cube 1", " --cube 1 --away 4,2"})
    void rankIsTheSameWithAQuickNet(String stakes) throws IOException {
        String both = folder.resolve("both.safetensors").toString();
        ModelFile.write(Path.of(both), MODEL.withQuick(TestNet.MODEL.net()));
        List<String> plays = plays("rank start --roll 4-1 --top 30" + stakes + " --net " + net);
        assertTrue(plays.size() > 10, plays.toString());
        assertEquals(plays, plays("rank start --roll 4-1 --top 30" + stakes + " --net " + both));
    }

    private static List<String> plays(String line) {
        Run run = Run.of(line.split(" "));
        assertEquals(0, run.code(), run.err());
        return run.out().lines().filter(each -> each.matches(" *[0-9]+  .*")).toList();
    }

    @Test
    void rankSaysWhatTheNetworkSays() {
        Run run = Run.of("rank", "start", "--roll", "3-1", "--net", net, "--top", "3");
        assertEquals(0, run.code(), run.err());
        List<PlayVerdict> expected = new PlayRanker(new NetworkEvaluator(MODEL)).rank(Position.start(), Roll.of(3, 1));
        List<String> lines =
                run.out().lines().filter(line -> line.matches("[123]  .*")).toList();
        for (int i = 0; i < 3; i++) {
            PlayVerdict play = expected.get(i);
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
