package org.pipwright.engine.record;

import java.util.Locale;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.rules.GameResult;

/**
 * The text form of records: a line a turn.
 *
 * <pre>
 * pipwright record 1
 * players: Ada, Ben
 * match: 5
 *
 * game 1: 0-0
 * Ada 3-1: 8/5 6/5
 * Ben 6-2: 24/18 13/11  # a comment
 * Ada doubles
 * Ben takes
 * </pre>
 *
 * <p>Printing and reading back gives an equal record; what was printed is printed the same again.
 */
@PublicApi
public final class RecordText {
    static final String FIRST_LINE = "pipwright record 1";

    private RecordText() {}

    /**
     * Writes a record.
     *
     * @param record the record
     * @return its text, each line ended by a line feed
     */
    public static String print(GameRecord record) {
        StringBuilder text = new StringBuilder(FIRST_LINE).append('\n');
        heading(record.heading(), text);
        int[] won = new int[2];
        for (int i = 0; i < record.games().size(); i++) {
            Game game = record.games().get(i);
            text.append("\ngame ").append(i + 1).append(": ");
            text.append(won[0]).append('-').append(won[1]).append('\n');
            game.entries().forEach(entry -> entry(record.heading(), entry, text));
            won[game.points() > 0 ? 0 : 1] += Math.abs(game.points());
        }
        return text.toString();
    }

    /**
     * Reads a record.
     *
     * @param text the text
     * @return the record
     * @throws InvalidRecordException if it cannot be read or breaks the rules of the game
     */
    public static GameRecord parse(String text) {
        return new RecordReader(true).read(text);
    }

    private static void heading(Heading heading, StringBuilder text) {
        text.append("players: ")
                .append(heading.name(0))
                .append(", ")
                .append(heading.name(1))
                .append('\n');
        Rules rules = heading.rules();
        text.append(rules.match() ? "match: " + rules.length() : "money: " + money(rules))
                .append('\n');
        for (String detail : Heading.DETAILS) {
            if (heading.details().containsKey(detail)) {
                text.append(detail)
                        .append(": ")
                        .append(heading.details().get(detail))
                        .append('\n');
            }
        }
        heading.remarks().forEach(remark -> text.append(comment(remark)).append('\n'));
    }

    private static String money(Rules rules) {
        return (rules.jacoby() ? "jacoby" : "no jacoby") + (rules.beavers() ? ", beavers" : "");
    }

    private static void entry(Heading heading, Entry entry, StringBuilder text) {
        if (entry instanceof Entry.Remark) {
            text.append(comment(entry.note())).append('\n');
            return;
        }
        if (entry instanceof Entry.Turn) {
            Entry.Turn turn = (Entry.Turn) entry;
            text.append(heading.name(turn.side()))
                    .append(' ')
                    .append(turn.roll())
                    .append(": ")
                    .append(turn.play());
        } else if (entry instanceof Entry.Cube) {
            Entry.Cube cube = (Entry.Cube) entry;
            text.append(heading.name(cube.side())).append(' ').append(Referee.word(cube.action()));
        } else {
            Entry.Resignation given = (Entry.Resignation) entry;
            text.append(heading.name(given.side())).append(" resigns");
            text.append(
                    given.result() == GameResult.SINGLE
                            ? ""
                            : " " + given.result().name().toLowerCase(Locale.ROOT));
        }
        text.append(entry.note().isEmpty() ? "" : "  " + comment(entry.note())).append('\n');
    }

    private static String comment(String note) {
        return ("# " + note).strip();
    }
}
