package org.pipwright.engine.rollout;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.pipwright.engine.files.WorkFile;

/**
 * Keeps the numbers of a rollout in a small text file, so that it can be stopped and resumed: the same numbers come out as
 * without a stop. What was found is the number of trials; means and spreads, as decimal numbers that read back exactly; the
 * same by the rolls trials began with. A file of before lacks the last: the errors of what goes on from it take trials as
 * independent, which makes them too large. Used by one thread.
 */
public final class RolloutFile {
    private static final String TRIALS = "trials ";
    private static final String MEANS = "means ";

    private static final String STRATA = "by-rolls ";

    private static final WorkFile.Kind KIND = new WorkFile.Kind("rollout", "pipwright-rollout 3", TRIALS, 1 << 26)
            .reading("pipwright-rollout 2", RolloutSettings::ofVersion2);

    /** Keeps nothing. */
    public static final RolloutFile NONE = new RolloutFile(KIND.none());

    private final WorkFile file;

    private RolloutFile(WorkFile file) {
        this.file = file;
    }

    /**
     * A file for a rollout that begins anew; an old file is replaced.
     *
     * @param path the file; its folder must exist
     * @param judge what judges, one thing a line, such as the checksum of the net
     * @return the file
     */
    public static RolloutFile fresh(Path path, List<String> judge) {
        return new RolloutFile(KIND.fresh(path, judge));
    }

    /**
     * The file of a rollout to go on with.
     *
     * @param path the file; it must exist
     * @param judge what judges, one thing a line, such as the checksum of the net
     * @return the file
     */
    public static RolloutFile resumed(Path path, List<String> judge) {
        return new RolloutFile(KIND.resumed(path, judge));
    }

    /** What is known so far; of no trials where there is nothing to go on with. */
    Moments read(List<String> identity, int candidates, int series) {
        return file.read(identity)
                .map(found -> moments(found, candidates, series))
                .orElseGet(() -> new Moments(candidates, series));
    }

    private Moments moments(List<String> found, int candidates, int series) {
        boolean whole = found.size() == 2 || found.size() == 3 && found.get(2).startsWith(STRATA);
        if (!whole || !found.get(1).startsWith(MEANS)) {
            throw file.damaged("its trials and means are missing");
        }
        try {
            int trials = Integer.parseInt(found.get(0).substring(TRIALS.length()));
            double[] numbers = numbers(found.get(1), MEANS, Moments.size(candidates, series));
            Strata strata = found.size() == 2
                    ? null
                    : Strata.restore(
                            candidates, series, trials, numbers(found.get(2), STRATA, Strata.size(candidates, series)));
            if (trials < 0) {
                throw file.damaged("its number of trials is below 0");
            }
            return Moments.restore(candidates, series, trials, numbers, strata);
        } catch (IllegalArgumentException e) {
            throw file.damaged("a number in it is none, or out of range");
        }
    }

    private double[] numbers(String line, String name, int count) {
        double[] numbers = Arrays.stream(line.substring(name.length()).split(" "))
                .mapToDouble(Double::parseDouble)
                .toArray();
        if (numbers.length != count || !Arrays.stream(numbers).allMatch(Double::isFinite)) {
            throw file.damaged("its trials and means do not belong together");
        }
        return numbers;
    }

    /** Writes the file if the last time is some seconds ago. */
    void keep(List<String> identity, Moments moments) {
        file.keep(identity, () -> found(moments));
    }

    /** Writes the file at the beginning; throws if that cannot be done. */
    void begin(List<String> identity, Moments moments) {
        file.begin(identity, () -> found(moments));
    }

    /** Writes the file at the end. */
    void end(List<String> identity, Moments moments) {
        file.end(identity, () -> found(moments));
    }

    /**
     * Why the file does not have what was found last.
     *
     * @return what went wrong; empty if it was written, or nothing is kept
     */
    public Optional<String> problem() {
        return file.problem();
    }

    /**
     * Has somebody told when the file cannot be written any more; the work goes on.
     *
     * @param listener given a line each time that begins
     */
    public void warning(Consumer<String> listener) {
        file.warning(listener);
    }

    private static List<String> found(Moments moments) {
        List<String> lines = new ArrayList<>();
        lines.add(TRIALS + moments.trials());
        lines.add(line(MEANS, moments.contents()));
        moments.strata().ifPresent(strata -> lines.add(line(STRATA, strata.contents())));
        return lines;
    }

    private static String line(String name, double[] numbers) {
        return name + Arrays.stream(numbers).mapToObj(Double::toString).collect(Collectors.joining(" "));
    }
}
