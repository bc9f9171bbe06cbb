package org.pipwright.engine.rollout;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.files.AtomicFile;
import org.pipwright.engine.files.SealedLines;
import org.pipwright.engine.text.Excerpt;

/**
 * Keeps the numbers of a rollout in a small text file, so that it can be stopped and resumed: the same numbers come out as
 * without a stop. Lines of the file: form and version; what the rollout is about; the number of trials; means and spreads,
 * as decimal numbers that read back exactly; the SHA-256 of all lines before. Written atomically. Used by one thread.
 */
public final class RolloutFile {
    /** Keeps nothing. */
    public static final RolloutFile NONE = new RolloutFile(null, List.of(), false);

    private static final String FORM = "pipwright-rollout 2";
    private static final String TRIALS = "trials ";
    private static final String MEANS = "means ";

    /** Far above any rollout's file: some hundred candidates. */
    private static final int MOST_BYTES = 1 << 24;

    private static final long INTERVAL = Duration.ofSeconds(10).toNanos();

    private final Path path;
    private final List<String> judge;
    private final boolean resume;
    private long lastWritten = System.nanoTime();

    private RolloutFile(Path path, List<String> judge, boolean resume) {
        this.path = path;
        this.judge = List.copyOf(judge);
        this.resume = resume;
    }

    /**
     * A file for a rollout that begins anew; an old file is replaced.
     *
     * @param path the file; its folder must exist
     * @param judge what judges, one thing a line, such as the checksum of the net
     * @return the file
     */
    public static RolloutFile fresh(Path path, List<String> judge) {
        return new RolloutFile(path, judge, false);
    }

    /**
     * The file of a rollout to go on with.
     *
     * @param path the file; it must exist
     * @param judge what judges, one thing a line, such as the checksum of the net
     * @return the file
     */
    public static RolloutFile resumed(Path path, List<String> judge) {
        return new RolloutFile(path, judge, true);
    }

    /** What is known so far; of no trials where there is nothing to go on with. */
    Moments read(List<String> identity, int candidates, int series) {
        if (!resume) {
            return new Moments(candidates, series);
        }
        try {
            if (Files.size(path) > MOST_BYTES) {
                throw damaged("it is too large");
            }
            return parse(Files.readString(path), identity, candidates, series);
        } catch (CharacterCodingException e) {
            throw damaged("it is not text");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private InvalidRolloutFileException damaged(String how) {
        return new InvalidRolloutFileException("'" + path + "' is not a whole rollout file (" + how
                + "): use another copy, or begin anew with --save");
    }

    private Moments parse(String text, List<String> identity, int candidates, int series) {
        if (!text.startsWith(FORM + "\n")) {
            throw damaged("it does not begin with '" + FORM + "'");
        }
        List<String> lines = SealedLines.parse(FORM, text).orElseThrow(() -> damaged("its checksum is wrong"));
        int last = lines.size() - 1;
        if (last < 1
                || !lines.get(last - 1).startsWith(TRIALS)
                || !lines.get(last).startsWith(MEANS)) {
            throw damaged("its trials and means are missing");
        }
        requireSame(lines.subList(0, last - 1), about(identity));
        return moments(
                lines.get(last - 1).substring(TRIALS.length()),
                lines.get(last).substring(MEANS.length()),
                candidates,
                series);
    }

    private Moments moments(String trials, String means, int candidates, int series) {
        try {
            int count = Integer.parseInt(trials);
            double[] numbers = Arrays.stream(means.split(" "))
                    .mapToDouble(Double::parseDouble)
                    .toArray();
            boolean finite = Arrays.stream(numbers).allMatch(Double::isFinite);
            if (count < 0 || numbers.length != Moments.size(candidates, series) || !finite) {
                throw damaged("its trials and means do not belong together");
            }
            return Moments.restore(candidates, series, count, numbers);
        } catch (IllegalArgumentException e) {
            throw damaged("a number in it is none, or out of range");
        }
    }

    private void requireSame(List<String> found, List<String> wanted) {
        for (int i = 0; i < Math.max(found.size(), wanted.size()); i++) {
            String there = i < found.size() ? found.get(i) : "nothing more";
            String here = i < wanted.size() ? wanted.get(i) : "nothing more";
            if (!there.equals(here)) {
                throw new InvalidRolloutFileException("'" + path + "' belongs to another rollout: it has '"
                        + Excerpt.of(there) + "' where '" + Excerpt.of(here)
                        + "' is asked for; ask for the same, or begin anew with --save");
            }
        }
    }

    private List<String> about(List<String> identity) {
        List<String> lines = new ArrayList<>(judge);
        lines.addAll(identity);
        return lines;
    }

    /** Writes the file if the last time is some seconds ago. */
    void keep(List<String> identity, Moments moments) {
        if (System.nanoTime() - lastWritten > INTERVAL) {
            write(identity, moments);
        }
    }

    /** Writes the file. */
    void write(List<String> identity, Moments moments) {
        if (path == null) {
            return;
        }
        List<String> lines = new ArrayList<>(about(identity));
        lines.add(TRIALS + moments.trials());
        lines.add(MEANS
                + Arrays.stream(moments.contents()).mapToObj(Double::toString).collect(Collectors.joining(" ")));
        byte[] bytes = SealedLines.print(FORM, lines).getBytes(StandardCharsets.UTF_8);
        try {
            AtomicFile.write(path, out -> out.write(bytes));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        lastWritten = System.nanoTime();
    }
}
