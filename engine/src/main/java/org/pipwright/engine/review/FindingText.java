package org.pipwright.engine.review;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.judge.PlayVerdict;
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

    /** Fields before the plays, and fields of a play. */
    private static final int BEFORE = 4;

    private static final int OF_PLAY = 5;

    private FindingText() {}

    static String print(Finding finding) {
        List<String> fields = new ArrayList<>();
        fields.add(numbers(finding.chances()));
        fields.add(finding.cube().map(FindingText::numbers).orElse(NOTHING));
        fields.add(finding.luck().isPresent() ? Double.toString(finding.luck().getAsDouble()) : NOTHING);
        fields.add(finding.basis().name());
        for (PlayVerdict option : finding.options()) {
            fields.add(option.play().toString());
            fields.add(Double.toString(option.value()));
            fields.add(numbers(option.outcomes()));
            Depth depth = option.depth();
            fields.add(depth.lookahead() + " " + depth.games() + " " + depth.error() + " " + option.lookahead());
            fields.add(option.basis().name());
        }
        return String.join(FIELD, fields);
    }

    /**
     * A line of version 1, which said nothing of bases, in the present form, with {@link #NOTHING} for them. Games left open
     * there how far was looked ahead for the chances; here they say what they say of the value.
     */
    static String ofVersion1(String line) {
        String[] fields = line.split(FIELD, -1);
        if (fields.length < BEFORE || (fields.length - BEFORE) % (OF_PLAY - 1) != 0) {
            return line;
        }
        List<String> all = new ArrayList<>(List.of(fields).subList(0, BEFORE));
        all.add(NOTHING);
        for (int at = BEFORE; at < fields.length; at += OF_PLAY - 1) {
            all.addAll(List.of(fields).subList(at, at + OF_PLAY - 2));
            String depth = fields[at + OF_PLAY - 2];
            all.add(depth + " " + depth.split(" ")[0]);
            all.add(NOTHING);
        }
        return String.join(FIELD, all);
    }

    /**
     * Reads a line; throws IllegalArgumentException if it is none of this moment.
     *
     * @param point what a point is worth in the unit of the plays' values
     * @return what was found; empty if the line does not say what a value rests on that may come from a table or a
     *     simulation, so that it is to be found anew
     */
    static Optional<Finding> parse(String line, Moment moment, double point) {
        String[] fields = line.split(FIELD, -1);
        require(fields.length >= BEFORE && (fields.length - BEFORE) % OF_PLAY == 0);
        Outcomes chances = outcomes(fields[0]);
        // Once a match to 1 point had a cube: what a file says of it is passed over.
        require(!fields[1].equals(NOTHING) || !moment.mayDouble());
        Optional<CubeValues> cube = moment.mayDouble() ? Optional.of(values(fields[1], moment)) : Optional.empty();
        require(fields[2].equals(NOTHING) == moment.played().isEmpty());
        OptionalDouble luck =
                moment.played().isPresent() ? OptionalDouble.of(doubles(fields[2], 1)[0]) : OptionalDouble.empty();
        List<PlayVerdict> options = options(fields, moment);
        Basis basis = basis(fields[BEFORE - 1], moment.position());
        boolean told = basis != null && options.stream().allMatch(option -> option.basis() != null);
        return told
                ? Optional.of(new Finding(
                        chances, cube, luck, basis, options.isEmpty() ? options : PlayVerdict.costed(options, point)))
                : Optional.empty();
    }

    /** Null where it is not told and there is no contact any more. With contact, all is estimated. */
    private static Basis basis(String field, Position position) {
        if (!field.equals(NOTHING)) {
            return Basis.valueOf(field);
        }
        return position.contact() ? Basis.ESTIMATED : null;
    }

    private static List<PlayVerdict> options(String[] fields, Moment moment) {
        List<PlayVerdict> options = new ArrayList<>();
        for (int at = BEFORE; at < fields.length; at += OF_PLAY) {
            require(moment.played().isPresent());
            Position position = moment.position();
            Play play =
                    PlayText.parse(fields[at], position, moment.played().get().roll());
            double[] depth = doubles(fields[at + 3], 4);
            options.add(new PlayVerdict(
                    play,
                    doubles(fields[at + 1], 1)[0],
                    outcomes(fields[at + 2]),
                    new Depth((int) depth[0], (int) depth[1], depth[2]),
                    (int) depth[3],
                    basis(fields[at + 4], play.next()),
                    0,
                    0));
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
