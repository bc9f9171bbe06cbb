package org.pipwright.bench.strength;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.pipwright.bench.BenchCommand;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Says how much two references of the same decisions differ beyond their errors: what truncation brings, or another net. */
@Command(name = "differences", description = "Says how much two references differ beyond their errors.")
public final class DifferencesCommand extends BenchCommand {
    @Option(names = "--one", paramLabel = "FILE", required = true, description = "A reference, or a part of one.")
    private Path one;

    @Option(names = "--other", paramLabel = "FILE", required = true, description = "The reference to compare it with.")
    private Path other;

    @Override
    protected void run() throws IOException {
        Differences differences = Differences.of(references(one), references(other));
        if (differences.decisions() == 0) {
            throw new IllegalArgumentException("'" + one + "' and '" + other + "' have no decision in common");
        }
        out().printf(
                        Locale.ROOT,
                        "%d decisions in both, %d with the same best play; the first file's best plays lose %.5f points by the"
                                + " second%n",
                        differences.decisions(),
                        differences.sameBest(),
                        differences.loss());
        print("plays", differences.all());
        print("plays at most " + Differences.CLOSE + " behind", differences.close());
    }

    private static List<Reference> references(Path file) throws IOException {
        return JsonLines.read(file, ReferenceHeader.class, Reference.class).records();
    }

    private void print(String what, Differences.Sums sums) {
        if (sums.plays() == 0) {
            out().println("no " + what);
            return;
        }
        out().printf(
                        Locale.ROOT,
                        "%d %s: what they are behind differs by %+.5f on average, root mean square %.5f, of which errors make"
                                + " %.5f and leave %.5f%n",
                        sums.plays(),
                        what,
                        sums.mean(),
                        sums.size(),
                        sums.expected(),
                        sums.beyondErrors());
    }
}
