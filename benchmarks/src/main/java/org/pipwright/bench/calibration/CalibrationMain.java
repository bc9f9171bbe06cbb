package org.pipwright.bench.calibration;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import org.pipwright.bench.Judgements;
import org.pipwright.bench.Main;
import org.pipwright.bench.Options;
import org.pipwright.engine.files.AtomicFile;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.models.ModelCatalog;

/** Writes how a net's predictions compare with what happens in its games: tables, JSON and a picture, into a folder. */
public final class CalibrationMain {
    /** A game has some 55 rolls, so this takes five or six positions of each. */
    private static final int EVERY = 10;

    private CalibrationMain() {}

    public static void main(String[] args) {
        Main.run(args, words -> run(words, System.out));
    }

    static void run(List<String> args, PrintStream out) throws IOException {
        Options options = new Options(
                args,
                Set.of("--net", "--positions", "--every", "--lookahead", "--seed", "--threads", "--out"),
                Set.of("--tables"));
        Path folder = Path.of(options.required("--out"));
        String net = options.text("--net").orElse(ModelCatalog.shipped().defaultName());
        int lookahead = options.number("--lookahead", 0, 0, LookaheadSettings.MOST);
        int threads = options.number("--threads", Runtime.getRuntime().availableProcessors(), 1, 1024);
        boolean tables = options.has("--tables");
        Model model = ModelCatalog.shipped().load(net);
        Supplier<Judgement> judgements = tables ? Judgements.withTables(model, threads) : Judgements.net(model);
        Files.createDirectories(folder);
        Calibration calibration = Calibration.of(
                "net " + net + (tables ? " with bear-off tables" : "") + ", lookahead " + lookahead,
                judgements,
                lookahead,
                options.number("--positions", 200_000, 1, 10_000_000),
                options.number("--every", EVERY, 1, 1000),
                options.number("--seed", 1, 0, Integer.MAX_VALUE),
                threads);
        String text = CalibrationText.of(calibration);
        write(folder.resolve("calibration.md"), text);
        write(folder.resolve("calibration.json"), CalibrationJson.of(calibration));
        write(folder.resolve("calibration.svg"), CalibrationPicture.svg(calibration));
        byte[] png = CalibrationPicture.png(calibration);
        AtomicFile.write(folder.resolve("calibration.png"), to -> to.write(png));
        out.print(text);
    }

    private static void write(Path file, String text) throws IOException {
        AtomicFile.write(file, to -> to.write(text.getBytes(StandardCharsets.UTF_8)));
    }
}
