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
     * Number of last choices that printed sources name best or close to it.
     *
     * @return 0 to the number of rows
     */
    public long agreeing() {
        return rows.stream().filter(Row::agrees).count();
    }

    /**
     * What was chosen for a roll.
     *
     * @param roll the roll
     * @param choices the choice at each of the times
     * @param printed what printed sources name best, in words
     * @param agrees whether they name the last choice best or close to it
     */
    public record Row(String roll, List<Choice> choices, String printed, boolean agrees) {}

    /**
     * A choice.
     *
     * @param play the play
     * @param same whether it is the choice of the time before
     */
    public record Choice(String play, boolean same) {}
}
