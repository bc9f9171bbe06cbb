package org.pipwright.bench.strength;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.NetOption;
import org.pipwright.bench.Nets;
import org.pipwright.bench.SeedOption;
import org.pipwright.bench.ThreadsOption;
import org.pipwright.bench.Within;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Rolls out the plays of a file of decisions, or of a part of it; goes on where an earlier run was stopped. */
@Command(name = "reference", description = "Rolls out the plays of a file of decisions; goes on where it was stopped.")
public final class ReferenceCommand extends BenchCommand {
    /** Largest standard error of a difference, in points: on the processor, and on a device. */
    private static final double ERROR = 0.004;

    private static final double DEVICE_ERROR = 0.0007;

    @Option(names = "--decisions", paramLabel = "FILE", required = true, description = "The decisions.")
    private Path decisions;

    @Option(names = "--out", paramLabel = "FILE", required = true, description = "The file to write, or to go on with.")
    private Path file;

    @Mixin
    private NetOption net;

    @Option(
            names = "--part",
            paramLabel = "K/N",
            description = "Which part of the decisions (default: ${DEFAULT-VALUE}).")
    private String partText = "1/1";

    @Mixin
    private ThreadsOption threadsOption;

    @Option(names = "--trials", paramLabel = "N", description = "The most games of a play (default: ${DEFAULT-VALUE}).")
    @Within(min = 1, max = 10_000_000)
    private int trials = 12_960;

    @Mixin
    private SeedOption seed;

    @Option(
            names = "--lookahead",
            paramLabel = "N",
            description = "Rolls looked ahead in the games (default: ${DEFAULT-VALUE}).")
    @Within(min = 0, max = 2)
    private int lookahead = 0;

    @Option(names = "--truncation", paramLabel = "N", description = "Rolls after which a game is truncated; 0: never.")
    @Within(min = 0, max = 10_000)
    private int truncation = 0;

    @Option(
            names = "--error",
            paramLabel = "POINTS",
            description =
                    "Largest standard error of a difference to the best play (default: 0.004; with --device 0.0007).")
    private Double error;

    @Mixin
    private ReferenceDevice device;

    @Override
    protected void run() throws IOException {
        if (!given("--device")) {
            device.requireNone(this::given);
        }
        Model model = net.load();
        Part part = Part.parse(partText);
        ReferenceHeader header = new ReferenceHeader(
                ReferenceHeader.KIND,
                sha256(decisions),
                net.name(),
                model.notes().get(ModelFile.SHA256),
                seed.value(),
                device.given() ? device.lookahead() : lookahead,
                truncation,
                trials,
                allowed(),
                Sampler.WITHIN,
                device.given() ? device.share() : null,
                device.given() ? device.inHeader(model) : null);
        var content = JsonLines.read(decisions, DecisionsHeader.class, Decision.class);
        // Decisions of a regime follow each other; those at the same place of each in turn give a part that is stopped
        // early some of every regime.
        int each = content.header().each();
        List<Decision> share = content.records().stream()
                .filter(decision -> part.has(decision.id()))
                .sorted(Comparator.comparingInt(decision -> Math.floorMod(decision.id() - 1, each)))
                .collect(Collectors.toList());
        int threads = threadsOption.count();
        if (device.given()) {
            if (given("--lookahead")) {
                throw new IllegalArgumentException(
                        "on a device --choices says how games are played: 1 for no lookahead");
            }
            device.judge(share, model, header, file, threads);
            return;
        }
        try (Referee referee = new Referee(Nets.withTables(model, threads), header, threads);
                PartFile out = new PartFile(file, header)) {
            judge(share, referee, out);
        }
    }

    private double allowed() {
        if (error == null) {
            return device.given() ? DEVICE_ERROR : ERROR;
        }
        if (!(error > 0 && error < 1)) {
            throw new IllegalArgumentException("--error is " + error + ": give points above 0 and below 1");
        }
        return error;
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
