package org.pipwright.bench.strength;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.ClusterOption;
import org.pipwright.bench.NetOption;
import org.pipwright.bench.Nets;
import org.pipwright.bench.SeedOption;
import org.pipwright.bench.ThreadsOption;
import org.pipwright.bench.Within;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.parallel.WorkforceException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Rolls out the plays of a file of decisions; goes on where an earlier run was stopped. */
@Command(name = "reference", description = "Rolls out the plays of a file of decisions; resumes where it was stopped.")
public final class ReferenceCommand extends BenchCommand {
    /** Largest standard error of a difference, in points: on the processor, and on a device. */
    private static final double ERROR = 0.004;

    private static final double DEVICE_ERROR = 0.0007;

    @Option(names = "--decisions", paramLabel = "FILE", required = true, description = "The decisions.")
    private Path decisions;

    @Option(names = "--out", paramLabel = "FILE", required = true, description = "The file to write or resume.")
    private Path file;

    @Mixin
    private NetOption net;

    @Mixin
    private ThreadsOption threadsOption;

    @Option(names = "--trials", paramLabel = "N", description = "Most games for a play (default: ${DEFAULT-VALUE}).")
    @Within(min = 1, max = 10_000_000)
    private int trials = 12_960;

    @Mixin
    private SeedOption seed;

    @Option(
            names = "--lookahead",
            paramLabel = "N",
            description = "Rolls to look ahead in the games (default: ${DEFAULT-VALUE}).")
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

    @Mixin
    private ClusterOption cluster;

    @Override
    protected void run() throws IOException {
        if (!given("--device")) {
            device.requireNone(this::given);
        }
        Model model = net.load();
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
        // Decisions of a regime follow each other; those at the same place of each in turn give a run that is stopped
        // early
        // some of every regime.
        int each = content.header().each();
        List<Decision> share = content.records().stream()
                .sorted(Comparator.comparingInt(decision -> Math.floorMod(decision.id() - 1, each)))
                .collect(Collectors.toList());
        int threads = threadsOption.count();
        if (device.given()) {
            if (given("--lookahead")) {
                throw new IllegalArgumentException(
                        "on a device --choices says how games are played: 1 for no lookahead");
            }
            if (given("--cluster")) {
                throw new IllegalArgumentException("--device is this machine's card: leave it out, or --cluster");
            }
            device.judge(share, model, header, file, threads);
            return;
        }
        Knowledge knowledge = Nets.withTables(model, threads);
        try (ReferenceFile out = new ReferenceFile(file, header)) {
            List<Decision> left =
                    share.stream().filter(decision -> !out.has(decision.id())).toList();
            try (Workforce workforce = cluster.openIfGiven()) {
                if (workforce == null) {
                    judge(left, knowledge, header, threads, out);
                } else {
                    judge(left, knowledge, header, workforce, out);
                }
            }
            out().println(out.sort() + " references in " + file);
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

    private static void judge(
            List<Decision> left, Knowledge knowledge, ReferenceHeader header, int threads, ReferenceFile out)
            throws IOException {
        Adding adding = new Adding(left.size(), out);
        try (Referee referee = new Referee(knowledge, header, threads)) {
            for (Decision decision : left) {
                adding.test(referee.judge(decision));
            }
        }
    }

    /** Decisions are judged on other machines, one on each core. */
    static void judge(
            List<Decision> left, Knowledge knowledge, ReferenceHeader header, Workforce workforce, ReferenceFile out) {
        RefereeTrade trade = new RefereeTrade(workforce.share(knowledge.portable()), header);
        try {
            workforce.inOrder(trade, left.iterator(), new Adding(left.size(), out), () -> false);
        } catch (WorkforceException e) {
            throw new IllegalArgumentException(e.getMessage(), e);
        }
    }

    /** Adds references to a file and says how far it has come. */
    private static final class Adding implements Predicate<Reference> {
        private final long began = System.nanoTime();
        private final int all;
        private final ReferenceFile out;
        private int done;

        Adding(int all, ReferenceFile out) {
            this.all = all;
            this.out = out;
        }

        @Override
        public boolean test(Reference reference) {
            try {
                out.add(reference);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            done++;
            System.err.printf("%d of %d, %.1f s each%n", done, all, (System.nanoTime() - began) / 1e9 / done);
            return true;
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
