package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.models.ModelCatalog;
import org.pipwright.training.device.DeviceRequest;
import org.pipwright.training.run.InvalidRunException;
import org.pipwright.training.settings.InvalidSettingsException;

/** The whole recipe on a toy size by the plain twins of the card. */
class TrainerRunTest {
    private static final ResidualShape SMALL = new ResidualShape(128, 1);

    @TempDir
    Path temporary;

    private Path settings(String more) throws IOException {
        return Files.writeString(temporary.resolve("toy.settings"), ToyRun.SETTINGS + more);
    }

    /** Root of the mean squared difference of equity from that of the net that was copied, in games not learned from. */
    private static double errorOf(Model model) {
        LessonList lessons = new LessonList();
        new CopyGames(ModelCatalog.shipped().load("fifth"), new SplittableRandom(99)).play(500, lessons);
        NetworkEvaluator evaluator = new NetworkEvaluator(model);
        float[] chances = new float[6];
        double squares = 0;
        for (int i = 0; i < lessons.size(); i++) {
            evaluator.evaluate(lessons.planes(), 8 * i, chances, 0);
            float[] target = java.util.Arrays.copyOfRange(lessons.targets(), 6 * i, 6 * i + 6);
            squares += Math.pow(PlainNet.equity(chances) - PlainNet.equity(target), 2);
        }
        return Math.sqrt(squares / lessons.size());
    }

    private static List<Path> checkpoints(Path run) {
        try (Stream<Path> files = Files.list(run)) {
            return files.filter(file -> file.toString().endsWith(".state")).toList();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    /** All threads bring a run as far as plain loops do. */
    @Test
    void learnsByThreads() throws IOException {
        Path run = temporary.resolve("run");
        List<Path> nets =
                new ToyRun().train(ToyRun.request(run, settings(""), false), ThreadAccelerator::new, () -> false);
        double untrained =
                errorOf(new Model(ResidualNets.network(SMALL, SMALL.initial(new SplittableRandom(1))), Map.of()));
        assertEquals(3, nets.size());
        for (Path net : nets) {
            double error = errorOf(ModelFile.read(net));
            assertTrue(error < 0.65 * untrained, net + " is off by " + error + ", an untrained one by " + untrained);
        }
        List<String> figures = Files.readAllLines(run.resolve("metrics.csv"));
        Figures last = Figures.ofCsv(figures.get(figures.size() - 1), 3);
        assertTrue(last.targets() > 1000, last.toString());
    }

    /** A run beside other work counts what it computes, whatever passes meanwhile. */
    @Test
    void processorTimeCanBeCounted() throws IOException {
        Path run = temporary.resolve("run");
        Path settings = Files.writeString(
                temporary.resolve("processor.settings"),
                ToyRun.SETTINGS
                                .replace("minutes = 0.08", "minutes = 0.02")
                                .replace("final.pairs = 20", "final.pairs = 2")
                        + "clock = processor\n");
        DeviceRequest request = ToyRun.request(run, settings, false);
        new TrainerRun(
                        request,
                        ThreadTrainer.DEVICE,
                        ThreadAccelerator::new,
                        () -> {
                            throw new AssertionError("asked for the time that passes");
                        },
                        said -> {},
                        () -> false)
                .train();
        assertTrue(Files.readString(run.resolve("run.txt")).contains("finished = "));
        Path other = temporary.resolve("other");
        InvalidSettingsException refused = assertThrows(InvalidSettingsException.class, () -> new ToyRun()
                .train(ToyRun.request(other, settings, false), () -> false));
        assertTrue(refused.getMessage().startsWith("clock = processor is for --device threads"), refused.getMessage());
        assertFalse(Files.exists(other));
    }

    @Test
    void learnsAndLeavesEverythingBehind() throws IOException {
        Path run = temporary.resolve("run");
        ToyRun toy = new ToyRun();
        List<Path> nets = toy.train(ToyRun.request(run, settings(""), false), () -> false);
        assertEquals(
                List.of(
                        run.resolve("net.safetensors"),
                        run.resolve("net-128x2.safetensors"),
                        run.resolve("net-quick-128x1.safetensors")),
                nets);
        double untrained =
                errorOf(new Model(ResidualNets.network(SMALL, SMALL.initial(new SplittableRandom(1))), Map.of()));
        for (Path net : nets) {
            double error = errorOf(ModelFile.read(net));
            assertTrue(error < 0.65 * untrained, net + " is off by " + error + ", an untrained one by " + untrained);
        }
        List<String> figures = Files.readAllLines(run.resolve("metrics.csv"));
        assertEquals(Figures.header(List.of("128x1", "quick-128x1", "128x2")), figures.get(0));
        Figures first = Figures.ofCsv(figures.get(1), 3);
        Figures last = Figures.ofCsv(figures.get(figures.size() - 1), 3);
        assertTrue(last.targets() > first.targets() && last.games() > 0, last.toString());
        assertEquals(20, last.pairs());
        String text = String.join("\n", figures.subList(1, figures.size())) + "\n";
        assertEquals(
                text,
                figures.stream()
                        .skip(1)
                        .map(line -> Figures.ofCsv(line, 3).toCsv() + "\n")
                        .reduce("", String::concat));
        assertTrue(Files.readString(run.resolve("report.html")).contains("Chart["));
        openingPlaysAreThoseOf(nets.get(0), run, figures.size() - 1);
        assertTrue(Files.readString(run.resolve("run.txt")).contains("device = plain loops\nfinished = "));
        assertEquals(2, checkpoints(run).size());
        assertEquals("Apache-2.0", ModelFile.read(nets.get(0)).notes().get("licence"));
        assertTrue(toy.said.stream().anyMatch(line -> line.matches(" +[\\d.]+ s  final  128x1 .* 20 pairs")));
    }

    /** One line an evaluation, the last with what the net that was left behind plays; and the report shows them. */
    private static void openingPlaysAreThoseOf(Path net, Path run, int evaluations) throws IOException {
        List<String> lines = Files.readAllLines(run.resolve("openings.csv"));
        assertEquals(evaluations, lines.size() - 1);
        String[] last = lines.get(lines.size() - 1).split(",");
        try (Judge judge = new Judge(Knowledge.of(ModelFile.read(net)), 1)) {
            for (int i = 0; i < Roll.opening().size(); i++) {
                Question question = Question.of(Position.start(), Roll.opening().get(i));
                Play best = judge.ask(question, Effort.STATIC).best().play();
                assertEquals(PlayText.print(best), last[1 + i]);
            }
        }
        String report = Files.readString(run.resolve("report.html"));
        assertTrue(report.contains("OpeningTable["), report);
        assertTrue(report.contains("play=" + last[1]), report);
    }

    /** Stopped while copying and again in self-play, it goes on each time; a finished run is left as it is. */
    @Test
    void goesOnWhereItWasStopped() throws IOException {
        Path run = temporary.resolve("run");
        new ToyRun().train(ToyRun.request(run, settings(""), false), after(8));
        RunState copying = newest(run);
        assertTrue(Double.isNaN(copying.began()) && copying.copied() > 0 && copying.targets() > 0, copying.toString());
        ToyRun second = new ToyRun();
        second.train(ToyRun.request(run, null, true), () -> Files.exists(run.resolve("metrics.csv")));
        RunState playing = newest(run);
        assertTrue(playing.seconds() > playing.began() && playing.seeds() > copying.seeds(), playing.toString());
        assertTrue(playing.nets().get(0).steps() > copying.nets().get(0).steps());
        new ToyRun().train(ToyRun.request(run, null, true), () -> false);
        RunState end = newest(run);
        assertEquals(playing.began(), end.began());
        assertTrue(end.targets() > playing.targets() && end.seconds() >= 4.8, end.toString());
        List<String> figures = Files.readAllLines(run.resolve("metrics.csv"));
        double pause = Figures.ofCsv(figures.get(2), 3).seconds()
                - Figures.ofCsv(figures.get(1), 3).seconds();
        assertTrue(pause >= 2, "strength is not evaluated sooner because of the stop: " + figures);
        String manifest = Files.readString(run.resolve("run.txt"));
        assertEquals(3, manifest.split("resumed = after ").length);
        byte[] before = Files.readAllBytes(run.resolve("net.safetensors"));
        new ToyRun().train(ToyRun.request(run, null, true), () -> false);
        assertEquals(manifest, Files.readString(run.resolve("run.txt")));
        assertArrayEquals(before, Files.readAllBytes(run.resolve("net.safetensors")));
    }

    /** Tells to stop once it has been asked so often. */
    private static java.util.function.BooleanSupplier after(int times) {
        AtomicInteger asked = new AtomicInteger();
        return () -> asked.incrementAndGet() > times;
    }

    private static RunState newest(Path run) {
        return CardFolder.open(run)
                .newest(List.of(SMALL, SMALL, new ResidualShape(128, 2)), line -> {
                    throw new AssertionError(line);
                })
                .orElseThrow();
    }

    @Test
    void aDamagedCheckpointCostsWhatCameAfterTheOneBefore() throws IOException {
        Path run = temporary.resolve("run");
        new ToyRun()
                .train(
                        ToyRun.request(run, settings(""), false),
                        () -> checkpoints(run).size() == 2);
        List<Path> sorted = checkpoints(run).stream().sorted().toList();
        assertEquals(2, sorted.size());
        Files.write(sorted.get(1), new byte[100]);
        ToyRun toy = new ToyRun();
        toy.train(ToyRun.request(run, null, true), after(30));
        assertTrue(
                toy.said.get(0).startsWith("warning: checkpoint '" + sorted.get(1) + "' is unusable"), toy.said.get(0));
        assertTrue(newest(run).nets().get(0).steps() > 0);
    }

    /** A file with a net that has random weights. */
    private Path teacher() throws IOException {
        Path file = temporary.resolve("teacher.safetensors");
        ModelFile.write(file, new Model(ResidualNets.network(SMALL, Weights.of(SMALL)), Map.of()));
        return file;
    }

    /** Pupils learn from a net that stays as it is. */
    @Test
    void teachesPupilsOnly() throws IOException {
        Path file = teacher();
        Path run = temporary.resolve("run");
        ToyRun toy = new ToyRun();
        toy.train(
                ToyRun.request(
                        run,
                        settings("start.deep = FILE\nstart.quick = FILE\nteach.only = yes\nteach.steps = 5\n"
                                .replace("FILE", file.toString())),
                        false),
                () -> false);
        RunState end = newest(run);
        assertArrayEquals(
                ResidualNets.weights(SMALL, ModelFile.read(file)),
                end.nets().get(0).average());
        assertEquals(0, end.nets().get(1).steps());
        assertTrue(end.nets().get(2).steps() > 100, end.nets().get(2).steps() + " steps");
        List<String> figures = Files.readAllLines(run.resolve("metrics.csv"));
        double first = Figures.ofCsv(figures.get(1), 3).nets().get(2).error();
        double last =
                Figures.ofCsv(figures.get(figures.size() - 1), 3).nets().get(2).error();
        assertTrue(last < 0.7 * first, "error of equity " + first + ", then " + last);
    }

    /** A deep network that has learned copies nothing; the quick one beside it does. */
    @Test
    void whatHasLearnedDoesNotCopy() throws IOException {
        Path file = teacher();
        Path run = temporary.resolve("run");
        AtomicInteger asked = new AtomicInteger();
        // Stopped while copying, before self-play, in which both learn.
        new ToyRun()
                .train(
                        ToyRun.request(run, settings("start.deep = " + file + "\n"), false),
                        () -> asked.incrementAndGet() > 15);
        RunState end = newest(run);
        assertEquals(0, end.nets().get(0).steps());
        assertArrayEquals(
                ResidualNets.weights(SMALL, ModelFile.read(file)),
                end.nets().get(0).average());
        assertTrue(end.nets().get(1).steps() > 0);
    }

    @Test
    void foldersInUseAndMissingRunsAreRefused() throws IOException {
        Path run = Files.createDirectory(temporary.resolve("run"));
        Path settings = settings("");
        Files.writeString(run.resolve("mine.txt"), "mine");
        InvalidRunException full = assertThrows(
                InvalidRunException.class, () -> new ToyRun().train(ToyRun.request(run, settings, false), () -> false));
        assertTrue(full.getMessage().contains("is not empty: give --resume"), full.getMessage());
        InvalidRunException none = assertThrows(
                InvalidRunException.class, () -> new ToyRun().train(ToyRun.request(run, null, true), () -> false));
        assertTrue(none.getMessage().contains("leave --resume out"), none.getMessage());
    }
}
