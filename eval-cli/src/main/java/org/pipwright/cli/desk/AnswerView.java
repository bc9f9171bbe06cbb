package org.pipwright.cli.desk;

import java.util.List;

/**
 * What the net says of the position that is set up, as a page shows it.
 *
 * @param heading what is asked, and of whom
 * @param depth how deeply it has looked
 * @param note why there is no answer, or what it rests on; may be empty
 * @param match whether values are chances to win the match, in per cent
 * @param cubeful whether values are with the cube
 * @param rows the plays, best first; none before the roll
 * @param chances before the roll: the six chances, win above lose; none for plays
 * @param actions before the roll: what can be done about the cube
 * @param sentence what to do about the cube; may be empty
 * @param rollable whether there is something to roll out
 */
public record AnswerView(
        String heading,
        String depth,
        String note,
        boolean match,
        boolean cubeful,
        List<Row> rows,
        List<List<String>> chances,
        List<Action> actions,
        String sentence,
        boolean rollable) {
    /**
     * A play.
     *
     * @param play the play
     * @param id its name among the elements of the page
     * @param href the address that shows it
     * @param chosen whether it is shown now
     * @param close whether it is worth rolling out
     * @param value what it is worth
     * @param cost what it costs
     * @param grade the cost in a word
     * @param depth how deeply it was looked at
     * @param wins chance to win, in per cent
     * @param gammons chance to win a gammon or more
     * @param lost chance to lose a gammon or more
     */
    public record Row(
            String play,
            String id,
            String href,
            boolean chosen,
            boolean close,
            String value,
            String cost,
            String grade,
            String depth,
            String wins,
            String gammons,
            String lost) {}

    /**
     * Something to do about the cube.
     *
     * @param words what
     * @param value what it is worth to the side on roll
     * @param cost what it costs the side that does it
     * @param grade the cost in a word
     */
    public record Action(String words, String value, String cost, String grade) {}

    /**
     * The same for those who only look: without links and without a choice of plays to roll out.
     *
     * @return such a view
     */
    public AnswerView plain() {
        List<Row> plain = rows.stream()
                .map(row -> new Row(
                        row.play,
                        row.id,
                        "",
                        false,
                        row.close,
                        row.value,
                        row.cost,
                        row.grade,
                        row.depth,
                        row.wins,
                        row.gammons,
                        row.lost))
                .toList();
        return new AnswerView(heading, depth, note, match, cubeful, plain, chances, actions, sentence, false);
    }

    /** Nothing is said, and why. */
    static AnswerView none(String heading, String note) {
        return new AnswerView(heading, "", note, false, false, List.of(), List.of(), List.of(), "", false);
    }
}
