package org.pipwright.cli.report;

import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.pipwright.engine.evaluation.Outcomes;

/**
 * A column whose width is known beforehand, since rows are printed as they come.
 *
 * @param <R> what a row is about
 * @param name its heading
 * @param width characters, to the right if below 0; not used in CSV
 * @param cell what a row has in it
 */
record Column<R>(String name, int width, Function<R, Object> cell) {
    /** A column of CSV. */
    static <R> Column<R> of(String name, Function<R, Object> cell) {
        return new Column<>(name, 0, cell);
    }

    /** Six columns of CSV. */
    static <R> List<Column<R>> chances(Function<R, Outcomes> of) {
        return List.of(
                chance("winSingle", of, Outcomes::winSingle),
                chance("winGammon", of, Outcomes::winGammon),
                chance("winBackgammon", of, Outcomes::winBackgammon),
                chance("loseSingle", of, Outcomes::loseSingle),
                chance("loseGammon", of, Outcomes::loseGammon),
                chance("loseBackgammon", of, Outcomes::loseBackgammon));
    }

    private static <R> Column<R> chance(String name, Function<R, Outcomes> of, ToDoubleFunction<Outcomes> chance) {
        return of(name, row -> Numbers.millionths(chance.applyAsDouble(of.apply(row))));
    }

    /** Columns, then others. */
    static <R> List<Column<R>> join(List<Column<R>> first, List<Column<R>> then) {
        return Stream.concat(first.stream(), then.stream()).collect(Collectors.toList());
    }
}
