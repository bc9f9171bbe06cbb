package org.pipwright.engine.rollout;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.files.WorkFile;

/**
 * The numbers of a rollout as lines of a file: the number of trials; means and spreads, as decimal numbers that read back
 * exactly; the same by the rolls trials began with. A file of before lacks the last: the errors of what goes on from it take
 * trials as independent, which makes them too large.
 */
final class MomentsText {
    private static final String TRIALS = "trials ";
    private static final String MEANS = "means ";
    private static final String STRATA = "by-rolls ";

    /** Files of rollouts. */
    static final WorkFile.Kind KIND = new WorkFile.Kind("rollout", "pipwright-rollout 3", TRIALS, 1 << 26)
            .reading("pipwright-rollout 2", RolloutSettings::ofVersion2);

    private final WorkFile file;

    private MomentsText(WorkFile file) {
        this.file = file;
    }

    /** What a file knows so far; of no trials where there is nothing to go on with. */
    static Moments read(WorkFile file, List<String> identity, int candidates, int series) {
        return file.read(identity)
                .map(found -> new MomentsText(file).moments(found, candidates, series))
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

    /** The lines, which read back exactly. */
    static List<String> lines(Moments moments) {
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
