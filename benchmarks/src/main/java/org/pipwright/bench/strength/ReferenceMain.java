package org.pipwright.bench.strength;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.pipwright.bench.Judgements;
import org.pipwright.bench.Main;
import org.pipwright.bench.Options;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.models.ModelCatalog;

/** Rolls out the plays of a file of decisions, or of a part of it; goes on where an earlier run was stopped. */
public final class ReferenceMain {
    /** Largest standard error of a difference, in points. */
    private static final double ERROR = 0.004;

    private ReferenceMain() {}

    public static void main(String[] args) {
        Main.run(args, ReferenceMain::run);
    }

    private static void run(List<String> args) throws IOException {
        Options options = new Options(
                args,
                Set.of(
                        "--decisions",
                        "--out",
                        "--net",
                        "--part",
                        "--threads",
                        "--trials",
                        "--seed",
                        "--lookahead",
                        "--truncation"),
                Set.of());
        Path decisions = Path.of(options.required("--decisions"));
        String net =
                options.text("--net").orElseGet(() -> ModelCatalog.shipped().defaultName());
        Model model = ModelCatalog.shipped().load(net);
        Part part = Part.parse(options.text("--part").orElse("1/1"));
        ReferenceHeader header = new ReferenceHeader(
                ReferenceHeader.KIND,
                sha256(decisions),
                net,
                model.notes().get(ModelFile.SHA256),
                options.number("--seed", 1, 0, Integer.MAX_VALUE),
                options.number("--lookahead", 0, 0, 2),
                options.number("--truncation", 0, 0, 10_000),
                options.number("--trials", 12_960, 1, 10_000_000),
                ERROR,
                Sampler.WITHIN);
        var content = JsonLines.read(decisions, DecisionsHeader.class, Decision.class);
        // Decisions of a regime follow each other; those at the same place of each in turn give a part that is stopped
        // early some of every regime.
        int each = content.header().each();
        List<Decision> share = content.records().stream()
                .filter(decision -> part.has(decision.id()))
                .sorted(Comparator.comparingInt(decision -> Math.floorMod(decision.id() - 1, each)))
                .collect(Collectors.toList());
        int threads = options.number("--threads", Runtime.getRuntime().availableProcessors(), 1, 1024);
        try (Referee referee = new Referee(Judgements.withTables(model, threads), header, threads);
                PartFile out = new PartFile(Path.of(options.required("--out")), header)) {
            judge(share, referee, out);
        }
    }

    private static void judge(List<Decision> share, Referee referee, PartFile out) throws IOException {
        long began = System.nanoTime();
        int here = 0;
        for (int i = 0; i < share.size(); i++) {
            if (!out.has(share.get(i).id())) {
                out.add(referee.judge(share.get(i)));
                here++;
                System.err.printf(
                        "%d of %d, %.1f s each%n", i + 1, share.size(), (System.nanoTime() - began) / 1e9 / here);
            }
        }
    }

    static String sha256(Path file) throws IOException {
        if (!Files.exists(file)) {
            throw new IllegalArgumentException("no file '" + file + "': check the path");
        }
        try {
            byte[] sum = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file));
            return HexFormat.of().formatHex(sum);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every JDK has SHA-256", e);
        }
    }
}
