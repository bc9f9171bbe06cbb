package org.pipwright.bench.strength;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import org.pipwright.bench.Nets;
import org.pipwright.bench.Within;
import org.pipwright.engine.bearoff.TableHorizon;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.network.Net;
import org.pipwright.models.ModelCatalog;
import org.pipwright.training.device.DeviceGames;
import org.pipwright.training.device.DeviceRollouts;
import org.pipwright.training.device.MissingDeviceException;
import org.pipwright.training.device.RolloutRules;
import picocli.CommandLine.Option;

/** Options of rollouts on a device, and what they do. */
final class ReferenceDevice {
    private static final double NANOS_A_SECOND = 1e9;
    private static final double SECONDS_A_MINUTE = 60;
    private static final double SECONDS_BETWEEN_LINES = 5;

    /** These mean nothing on the processor. */
    private static final List<String> OWN = List.of(
            "--quick", "--keep", "--choices", "--choice-margin", "--share", "--minutes", "--at-once", "--lanes");

    @Option(
            names = "--device",
            paramLabel = "NAME",
            description = "Roll out on this device, many games at once: cuda, an NVIDIA card.")
    private String name;

    @Option(
            names = "--quick",
            paramLabel = "NAME|FILE",
            description = "With --device: a net that drops plays before the net judges the rest (default: the one in"
                    + " the net's file).")
    private String quick;

    @Option(
            names = "--keep",
            paramLabel = "POINTS",
            description = "With --device: the quick net keeps plays within so many points of its best, six at most"
                    + " (default: ${DEFAULT-VALUE}).")
    private double keep = 0.08;

    @Option(
            names = "--choices",
            paramLabel = "N",
            description =
                    "With --device: most plays among which lookahead 1 chooses (default: ${DEFAULT-VALUE}); 1: the net"
                            + " alone chooses.")
    @Within(min = 1, max = 6)
    private int choices = 3;

    @Option(
            names = "--choice-margin",
            paramLabel = "POINTS",
            description = "With --device: points within which these plays are (default: ${DEFAULT-VALUE}).")
    private double choiceMargin = 0.03;

    @Option(
            names = "--share",
            paramLabel = "SHARE",
            description = "With --device: allow larger errors, up to this share of the difference"
                    + " (default: ${DEFAULT-VALUE}).")
    private double share = 0.04;

    @Option(
            names = "--minutes",
            paramLabel = "M",
            description = "With --device: begin no further decision after so many minutes (default: no limit).")
    private double minutes = Double.POSITIVE_INFINITY;

    @Option(
            names = "--at-once",
            paramLabel = "N",
            description = "With --device: positions evaluated at once (default: ${DEFAULT-VALUE}).")
    @Within(min = 1, max = 65_536)
    private int atOnce = 8192;

    @Option(
            names = "--lanes",
            paramLabel = "N",
            description = "With --device: groups of games that take turns on it (default: ${DEFAULT-VALUE}).")
    @Within(min = 1, max = 16)
    private int lanes = 3;

    boolean given() {
        return name != null;
    }

    /** Makes sure that none of its options is used without a device. */
    void requireNone(Predicate<String> given) {
        OWN.stream().filter(given).findFirst().ifPresent(option -> {
            throw new IllegalArgumentException(option + " is for rollouts on a device: add --device cuda");
        });
    }

    double share() {
        return share;
    }

    /** Rolls that plays are chosen by. */
    int lookahead() {
        return choices > 1 ? 1 : 0;
    }

    ReferenceHeader.OnDevice inHeader(Model model) {
        String sum = quick == null
                ? model.notes().get(ModelFile.SHA256)
                : quickModel().notes().get(ModelFile.SHA256);
        return new ReferenceHeader.OnDevice(
                name, quick == null ? "in the net's file" : quick, sum, keep, choices, choiceMargin);
    }

    private Model quickModel() {
        return ModelCatalog.shipped().load(quick);
    }

    private Net quickNet(Model model) {
        if (quick != null) {
            return quickModel().net();
        }
        return model.quick()
                .orElseThrow(() -> new IllegalArgumentException("the net has no quick one beside it: name a net that"
                        + " drops plays with --quick, or the net itself again"));
    }

    private void requireSense() {
        require(keep >= 0 && keep <= 6, "--keep", keep, "0 to 6 points");
        require(choiceMargin >= 0 && choiceMargin <= 6, "--choice-margin", choiceMargin, "0 to 6 points");
        require(share >= 0 && share < 1, "--share", share, "0 or more and less than 1");
        require(minutes > 0, "--minutes", minutes, "more than 0");
    }

    private static void require(boolean sense, String option, double value, String range) {
        if (!sense) {
            throw new IllegalArgumentException(option + " is " + value + ": give " + range);
        }
    }

    /** Judges those decisions that the file has not yet. */
    void judge(List<Decision> decisions, Model model, ReferenceHeader header, Path file, int threads)
            throws IOException {
        requireSense();
        var tables = Nets.withTables(model, threads).tables().orElseThrow();
        RolloutRules rules = new RolloutRules(
                model.net(),
                quickNet(model),
                keep,
                choices,
                choiceMargin,
                header.truncation(),
                () -> new TableHorizon(tables, Basis.DISTRIBUTIONS),
                atOnce,
                lanes);
        DeviceRollouts rollouts;
        try {
            rollouts = DeviceGames.of(name).rollouts(rules, threads);
        } catch (MissingDeviceException e) {
            throw new IllegalArgumentException(e.getMessage());
        }
        long began = System.nanoTime();
        BooleanSupplier late = () -> seconds(began) > SECONDS_A_MINUTE * minutes;
        try (ReferenceFile out = new ReferenceFile(file, header)) {
            List<Decision> left = decisions.stream()
                    .filter(decision -> !out.has(decision.id()))
                    .toList();
            System.err.println("on " + rollouts.description() + ": " + left.size() + " decisions");
            DeviceReferee referee = new DeviceReferee(rollouts, header, late);
            Lines lines = new Lines(began, left.size(), referee);
            referee.judge(left, reference -> {
                add(out, reference);
                lines.judged();
            });
            lines.last();
            System.err.println(rollouts.agreement().words());
            out.sort();
        }
    }

    private static void add(ReferenceFile out, Reference reference) {
        try {
            out.add(reference);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static double seconds(long began) {
        return (System.nanoTime() - began) / NANOS_A_SECOND;
    }

    /** Says now and then how far it has come. */
    private static final class Lines {
        private final long began;
        private final int all;
        private final DeviceReferee referee;
        private int judged;
        private double next = SECONDS_BETWEEN_LINES;

        Lines(long began, int all, DeviceReferee referee) {
            this.began = began;
            this.all = all;
            this.referee = referee;
        }

        void judged() {
            judged++;
            if (seconds(began) >= next) {
                next = seconds(began) + SECONDS_BETWEEN_LINES;
                last();
            }
        }

        void last() {
            double now = seconds(began);
            System.err.printf(
                    java.util.Locale.ROOT,
                    "%d of %d decisions in %.0f s, %d games, %.0f a second%n",
                    judged,
                    all,
                    now,
                    referee.games(),
                    referee.games() / now);
        }
    }
}
