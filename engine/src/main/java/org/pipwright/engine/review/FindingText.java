package org.pipwright.engine.review;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Depth;

/**
 * Findings as lines of text that read back exactly: fields between tabs, numbers between spaces, {@code -} for what is
 * not there.
 */
final class FindingText {
    private static final String NOTHING = "-";
    private static final String FIELD = "\t";
    private static final int VALUES = 4;

    private FindingText() {}

    static String print(Finding finding) {
        List<String> fields = new ArrayList<>();
        fields.add(numbers(finding.chances()));
        fields.add(finding.cube().map(FindingText::numbers).orElse(NOTHING));
        fields.add(finding.luck().isPresent() ? Double.toString(finding.luck().getAsDouble()) : NOTHING);
        for (PlayOption option : finding.options()) {
            fields.add(option.play().toString());
            fields.add(Double.toString(option.value()));
            fields.add(numbers(option.outcomes()));
            Depth depth = option.depth();
            fields.add(depth.lookahead() + " " + depth.games() + " " + depth.error());
        }
        return String.join(FIELD, fields);
    }

    /** Reads a line; throws IllegalArgumentException if it is none of this moment. */
    static Finding parse(String line, Moment moment) {
        String[] fields = line.split(FIELD, -1);
        require(fields.length >= 3 && (fields.length - 3) % VALUES == 0);
        Outcomes chances = outcomes(fields[0]);
        require(fields[1].equals(NOTHING) != moment.mayDouble());
        Optional<CubeValues> cube = moment.mayDouble() ? Optional.of(values(fields[1], moment)) : Optional.empty();
        require(fields[2].equals(NOTHING) == moment.played().isEmpty());
        OptionalDouble luck =
                moment.played().isPresent() ? OptionalDouble.of(doubles(fields[2], 1)[0]) : OptionalDouble.empty();
        return new Finding(chances, cube, luck, options(fields, moment));
    }

    private static List<PlayOption> options(String[] fields, Moment moment) {
        List<PlayOption> options = new ArrayList<>();
        for (int at = 3; at < fields.length; at += VALUES) {
            require(moment.played().isPresent());
            Position position = moment.position();
            Play play =
                    PlayText.parse(fields[at], position, moment.played().get().roll());
            double[] depth = doubles(fields[at + 3], 3);
            options.add(new PlayOption(
                    play,
                    doubles(fields[at + 1], 1)[0],
                    outcomes(fields[at + 2]),
                    new Depth((int) depth[0], (int) depth[1], depth[2])));
        }
        require(moment.played().isEmpty()
                || options.stream().anyMatch(option -> option.play()
                        .result()
                        .equals(moment.played().get().play().result())));
        return options;
    }

    private static CubeValues values(String field, Moment moment) {
        double[] numbers = doubles(field, VALUES);
        return new CubeValues(
                true, moment.stakes().mayBeaver(moment.cube()), numbers[0], numbers[1], numbers[2], numbers[3]);
    }

    private static String numbers(CubeValues values) {
        return values.noDouble() + " " + values.doubleTake() + " " + values.doublePass() + " " + values.doubleBeaver();
    }

    private static String numbers(Outcomes chances) {
        return chances.winSingle() + " " + chances.winGammon() + " " + chances.winBackgammon() + " "
                + chances.loseSingle() + " " + chances.loseGammon() + " " + chances.loseBackgammon();
    }

    private static Outcomes outcomes(String field) {
        double[] numbers = doubles(field, Outcomes.COUNT);
        return new Outcomes(numbers[0], numbers[1], numbers[2], numbers[3], numbers[4], numbers[5]);
    }

    private static double[] doubles(String field, int count) {
        double[] numbers =
                Arrays.stream(field.split(" ")).mapToDouble(Double::parseDouble).toArray();
        require(numbers.length == count && Arrays.stream(numbers).allMatch(Double::isFinite));
        return numbers;
    }

    private static void require(boolean holds) {
        if (!holds) {
            throw new IllegalArgumentException("a line that belongs to no turn");
        }
    }
}
