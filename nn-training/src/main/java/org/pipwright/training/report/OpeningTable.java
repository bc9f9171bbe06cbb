package org.pipwright.training.report;

import java.util.List;

/**
 * The play chosen for each opening roll, at times spread over a run.
 *
 * @param games games trained until each of the times
 * @param rows a row an opening roll
 */
public record OpeningTable(List<Long> games, List<Row> rows) {
    /**
     * A table.
     *
     * @param games games trained until each of the times
     * @param rows a row an opening roll
     */
    public OpeningTable {
        games = List.copyOf(games);
        rows = List.copyOf(rows);
    }

    /**
     * What was chosen for a roll.
     *
     * @param roll the roll
     * @param choices the choice at each of the times
     */
    public record Row(String roll, List<Choice> choices) {}

    /**
     * A choice.
     *
     * @param play the play
     * @param same whether it is the choice of the time before
     */
    public record Choice(String play, boolean same) {}
}
