package org.pipwright.bench.calibration;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.bench.cli.Main;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Tally;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.parallel.Post;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rules.PossibleOutcomes;
import org.pipwright.models.ModelCatalog;
import org.pipwright.training.device.DeviceAgreement;
import org.pipwright.training.device.DeviceDuel;
import org.pipwright.training.device.DeviceGames;
import org.pipwright.training.device.DevicePlayer;
import org.pipwright.training.device.DeviceRollouts;
import org.pipwright.training.device.DeviceSelfPlay;
import org.pipwright.training.device.RolloutRules;
import org.pipwright.training.device.SelfPlayRules;
import org.pipwright.training.device.SelfPlayedGame;

/** Predictions whose fit is known, because the test makes what happens. */
class CalibrationTest {
    private static final Model MODEL = ModelCatalog.shipped().load("fifth");

    private static final byte ALL = PossibleOutcomes.ALL;

    /** Games of some positions; in each, all positions have one chance to win a single game, and the rest to lose one. */
    private static Samples made(int games, int each, double told, double truth) {
        SplittableRandom random = new SplittableRandom(7);
        Samples samples = new Samples(games * each);
        for (int game = 0; game < games; game++) {
            float[] chances = new float[each * Outcomes.COUNT];
            for (int i = 0; i < each; i++) {
                chances[i * Outcomes.COUNT] = (float) told;
                chances[i * Outcomes.COUNT + 3] = (float) (1 - told);
            }
            byte[] masks = new byte[each];
            Arrays.fill(masks, ALL);
            boolean[] onRoll = new boolean[each];
            Arrays.fill(onRoll, true);
            samples.add(game, new Samples.OfGame(chances, masks, onRoll, random.nextDouble() < truth ? 0 : 3));
        }
        return samples;
    }

    private static Bin only(List<Bin> bins) {
        List<Bin> full = bins.stream().filter(bin -> bin.count() > 0).collect(Collectors.toList());
        assertEquals(1, full.size());
        return full.get(0);
    }

    @Test
    void rightPredictionsAreFoundRight() {
        Bin bin = only(Curve.of(Chance.WIN_SINGLE, made(4000, 1, 0.35, 0.35)).bins());
        assertEquals(0.3, bin.low(), 1e-12);
        assertEquals(0.35, bin.predicted(), 1e-6);
        assertEquals(Math.sqrt(0.35 * 0.65 / 4000), bin.error(), 3e-4);
        assertTrue(Math.abs(bin.difference()) < 3 * bin.error(), bin.toString());
    }

    @Test
    void wrongOnesAreFoundWrong() {
        Curve curve = Curve.of(Chance.WIN_AT_ALL, made(4000, 1, 0.35, 0.45));
        assertEquals(0.1, only(curve.bins()).difference(), 0.03);
        assertEquals(0.1, curve.meanDistance(), 0.03);
        assertEquals(only(curve.tenths()), curve.worstTenth());
    }

    /** Ten positions of a game that end alike say no more than one. */
    @Test
    void errorsAreThoseOfGames() {
        Bin one = only(Curve.of(Chance.LOSE_SINGLE, made(900, 1, 0.5, 0.5)).bins());
        Bin ten = only(Curve.of(Chance.LOSE_SINGLE, made(900, 10, 0.5, 0.5)).bins());
        assertEquals(10 * one.count(), ten.count());
        assertEquals(one.error(), ten.error(), 1e-9);
    }

    /** By the textbook's definition: the sum, over games, of squared deviations of their sums from what the ratio says. */
    @Test
    void errorsOfUnequalGamesAreTheTextbooks() {
        double[][] games = {{0.6, 0.7}, {0.65}, {0.62, 0.68, 0.64}, {0.69}};
        int[] ends = {1, 1, 0, 1};
        BinSums sums = new BinSums(0.6, 0.7);
        double total = 0;
        int count = 0;
        double[] differences = new double[games.length];
        for (int g = 0; g < games.length; g++) {
            for (double prediction : games[g]) {
                sums.add(g, prediction, ends[g]);
                differences[g] += ends[g] - prediction;
                count++;
            }
            total += differences[g];
        }
        double squares = 0;
        for (int g = 0; g < games.length; g++) {
            squares += Math.pow(differences[g] - total / count * games[g].length, 2);
        }
        assertEquals(Math.sqrt(squares * 4 / 3) / count, sums.bin().error(), 1e-12);
        assertEquals(total / count, sums.bin().difference(), 1e-12);
    }

    /** A chance of one in a thousand that has not come true in a hundred games may be one in a hundred. */
    @Test
    void whatHasNotHappenedHasAnErrorToo() {
        BinSums sums = new BinSums(0, 1);
        for (int game = 0; game < 100; game++) {
            sums.add(game, 0.001, 0);
        }
        assertEquals(Math.sqrt(0.001 * 0.999 / 100), sums.bin().error(), 1e-12);
    }

    @Test
    void ruledOutChancesAreLeftOut() {
        Samples samples = new Samples(2);
        byte[] masks = {0b001111, ALL};
        float[] chances = {0.5f, 0.1f, 0, 0.4f, 0, 0, 0.4f, 0.1f, 0, 0.3f, 0.2f, 0};
        // It ends with a gammon for the side that began, which is on roll in the first position only.
        samples.add(0, new Samples.OfGame(chances, masks, new boolean[] {true, false}, 1));
        Curve lost = Curve.of(Chance.LOSE_GAMMON, samples);
        assertEquals(1, lost.all().count());
        assertEquals(1, lost.all().observed());
        assertEquals(0.2, lost.all().predicted(), 1e-6);
        Curve won = Curve.of(Chance.WIN_GAMMON_OR_MORE, samples);
        assertEquals(2, won.all().count());
        assertEquals(0.5, won.all().observed());
    }

    @Test
    void chancesTogetherAreSums() {
        float[] six = {0.3f, 0.15f, 0.05f, 0.25f, 0.2f, 0.05f};
        double[] expected = {0.3, 0.15, 0.05, 0.25, 0.2, 0.05, 0.5, 0.2, 0.25};
        double[] found = Arrays.stream(Chance.values())
                .mapToDouble(chance -> chance.of(six, 0))
                .toArray();
        assertArrayEquals(expected, found, 1e-6);
        // A lost gammon.
        int[] happened = Arrays.stream(Chance.values())
                .mapToInt(chance -> chance.happened(4))
                .toArray();
        assertArrayEquals(new int[] {0, 0, 0, 0, 1, 0, 0, 0, 1}, happened);
    }

    @Test
    void tenthsHoldATenthEach() {
        int count = 1000;
        Samples samples = new Samples(count);
        for (int i = 0; i < count; i++) {
            float win = (i * 7 % count + 0.5f) / count;
            samples.add(
                    i, new Samples.OfGame(new float[] {win, 0, 0, 1 - win, 0, 0}, new byte[] {ALL}, new boolean[1], 3));
        }
        List<Bin> tenths = Curve.of(Chance.WIN_SINGLE, samples).tenths();
        assertEquals(10, tenths.size());
        tenths.forEach(bin -> assertEquals(count / 10, bin.count()));
        // Most gammon chances are the same, 0: that lot is not parted.
        assertEquals(count, Curve.of(Chance.WIN_GAMMON, samples).tenths().get(0).count());
    }

    /** One net, a few games: everything adds up, and threads change nothing. */
    @Test
    void gamesGiveThePositionsAskedFor() {
        Calibration calibration = Calibration.of("x", Knowledge.of(MODEL)::judgement, 0, 500, 10, 3, 1);
        assertEquals(calibration, Calibration.of("x", Knowledge.of(MODEL)::judgement, 0, 500, 10, 3, 2));
        assertEquals(9, calibration.curves().size());
        for (Curve curve : calibration.curves()) {
            Stream.of(curve.bins(), curve.tenths())
                    .forEach(bins -> assertEquals(
                            curve.all().count(),
                            bins.stream().mapToLong(Bin::count).sum()));
        }
        Curve win = calibration.curves().get(Chance.WIN_AT_ALL.ordinal());
        assertEquals(500, win.all().count());
        assertEquals(
                win.all().observed(),
                calibration.curves().stream()
                        .limit(3)
                        .mapToDouble(
                                curve -> curve.all().observed() * curve.all().count() / 500)
                        .sum(),
                1e-12);
    }

    @Test
    void theFolderHoldsTablesFiguresAndPictures(@TempDir Path folder) throws Exception {
        Path out = folder.resolve("new");
        StringWriter printed = new StringWriter();
        int code = Main.run(
                new PrintWriter(printed),
                new PrintWriter(System.err, true),
                "calibration",
                "--net",
                "fifth",
                "--positions",
                "3000",
                "--threads",
                "1",
                "--out",
                out.toString());
        assertEquals(0, code);

        JsonNode json =
                new ObjectMapper().readTree(out.resolve("calibration.json").toFile());
        assertEquals(3000, json.get("positions").asInt());
        assertEquals(9, json.get("chances").size());
        JsonNode single = json.get("chances").get(0);
        assertEquals(10, single.get("bins").size());
        String text = Files.readString(out.resolve("calibration.md"));
        assertTrue(text.contains("| win single | 3,000 |"), text);
        assertEquals(text, printed.toString());
        String svg = Files.readString(out.resolve("calibration.svg"));
        assertTrue(svg.contains("lose gammon or more"), "no heading");
        parse(svg);
        assertTrue(ImageIO.read(new ByteArrayInputStream(Files.readAllBytes(out.resolve("calibration.png"))))
                        .getWidth()
                > 1000);
    }

    /** It is well-formed; its document type is not fetched. */
    private static void parse(String svg) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        factory.newDocumentBuilder().parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void theSameFiguresGiveTheSamePicture() throws IOException {
        Calibration calibration =
                new Calibration("x", 1, 10, 500, 500, Curve.all(made(500, 1, 0.4, 0.4)), Optional.empty());
        assertEquals(
                CalibrationPicture.of(calibration).svg(),
                CalibrationPicture.of(calibration).svg());
        assertArrayEquals(
                CalibrationPicture.of(calibration).png(),
                CalibrationPicture.of(calibration).png());
    }

    /** Twelve games of two positions, both with six chances alike; the side that begins always wins a gammon. */
    @Test
    void gamesOfADeviceAreCountedForTheSideOnRoll() throws IOException {
        int[] planes = new int[2 * Planes.STRIDE];
        Position.start().copyTo(planes, 0);
        Position.start().copyTo(planes, Planes.STRIDE);
        float[] chances = new float[2 * Outcomes.COUNT];
        Arrays.fill(chances, 1 / 6f);
        SelfPlayedGame game = new SelfPlayedGame(planes, chances, new boolean[] {true, false}, 1);
        int[] asked = {0};
        DeviceGames device = new OneGameOverAgain(() -> {
            asked[0]++;
            return game;
        });
        Calibration calibration = Calibration.onDevice("x", device, new SelfPlayRules(MODEL.net(), 4, 10), 24, 1);
        assertEquals(12, calibration.games());
        assertEquals(12, asked[0]);
        assertTrue(calibration.source().startsWith("x, on a device: 24 positions"), calibration.source());
        String text = CalibrationText.of(calibration);
        assertTrue(text.contains("In the first games 1 of 200 decisions differ from the processor's (0.50 %)"), text);
        JsonNode json = new ObjectMapper().readTree(CalibrationJson.of(calibration));
        assertEquals(200, json.get("agreement").get("compared").asInt());
        Bin wonGammons = only(curve(calibration, Chance.WIN_GAMMON).bins());
        assertEquals(0.5 - 1 / 6.0, wonGammons.difference(), 1e-6);
        assertEquals(
                -1 / 6.0, only(curve(calibration, Chance.WIN_SINGLE).bins()).difference(), 1e-6);
    }

    private static Curve curve(Calibration calibration, Chance chance) {
        return calibration.curves().stream()
                .filter(curve -> curve.chance() == chance)
                .findAny()
                .orElseThrow();
    }

    /** A device that knows nothing but self-play. */
    private record OneGameOverAgain(Supplier<SelfPlayedGame> game) implements DeviceGames {
        @Override
        public String device() {
            return "test";
        }

        @Override
        public DeviceDuel duel(
                DevicePlayer a,
                DevicePlayer b,
                DuelSettings settings,
                int threads,
                Consumer<Tally> progress,
                BooleanSupplier stop) {
            throw new UnsupportedOperationException();
        }

        @Override
        public DeviceRollouts rollouts(RolloutRules rules, int threads) {
            throw new UnsupportedOperationException();
        }

        @Override
        public DeviceSelfPlay selfPlay(SelfPlayRules rules, int threads, Predicate<SelfPlayedGame> games) {
            boolean more = true;
            while (more) {
                more = games.test(game.get());
            }
            return new DeviceSelfPlay("a device", new DeviceAgreement(true, 200, 1, 0.0001));
        }
    }

    @Test
    void otherMachinesPlayTheSameGames() {
        Knowledge knowledge = Knowledge.of(MODEL);
        assertEquals(
                Calibration.of("net", knowledge::judgement, 0, 300, 10, 5, 2),
                Calibration.elsewhere("net", knowledge, 0, 300, 10, 5, new Post()));
    }
}
