package org.pipwright.engine.record;

import java.util.Map;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.play.Step;
import org.pipwright.engine.position.Planes;

/**
 * Records in the Smart Game Format, FF[4], for backgammon, GM[6] (the open standard kept by Arno Hollosi; written here
 * from memory of its text). Each game is a tree; the first player is Black. Points are letters counted as Black counts
 * them, {@code a} for Black's 1 point to {@code x}; {@code y} is the bar, {@code z} is off.
 *
 * <p>What SGF has no place for is lost: a remark on a resignation comes back as a line before it, a resigned gammon that
 * counts as a single game (Jacoby rule) as a single. Beavers go by a move and a rule of our own.
 */
@PublicApi
public final class SgfText {
    static final Map<String, String> DETAILS = Map.of("event", "EV", "place", "PC", "date", "DT", "scorer", "US");

    static final Map<CubeAction, String> ACTIONS = Map.of(
            CubeAction.DOUBLE, "double", CubeAction.TAKE, "take", CubeAction.PASS, "drop", CubeAction.BEAVER, "beaver");

    private final GameRecord record;
    private final StringBuilder text = new StringBuilder();

    private SgfText(GameRecord record) {
        this.record = record;
    }

    /**
     * Writes a record.
     *
     * @param record the record, with at least one game
     * @return the text of an SGF file
     * @throws IllegalArgumentException if the record has no game
     */
    public static String print(GameRecord record) {
        if (record.games().isEmpty()) {
            throw new IllegalArgumentException("the record has no game: an SGF file needs one");
        }
        SgfText printed = new SgfText(record);
        int[] won = new int[2];
        for (int i = 0; i < record.games().size(); i++) {
            Game game = record.games().get(i);
            printed.game(i, won);
            won[game.points() > 0 ? 0 : 1] += Math.abs(game.points());
        }
        return printed.text.toString();
    }

    /**
     * Reads a record.
     *
     * @param text the text of an SGF file; of variations the first is followed
     * @return the record
     * @throws InvalidRecordException if it cannot be read or breaks the rules of the game
     */
    public static GameRecord parse(String text) {
        return new SgfImport().read(SgfReader.read(text));
    }

    private void game(int index, int[] won) {
        Heading heading = record.heading();
        Game game = record.games().get(index);
        text.append("(;FF[4]GM[6]CA[UTF-8]AP[Pipwright]");
        property("PB", heading.name(0));
        property("PW", heading.name(1));
        rules(heading.rules(), won);
        text.append("MI")
                .append(heading.rules().match() ? "[length:" + heading.rules().length() + "]" : "");
        text.append("[game:" + (index + 1) + "][bs:" + won[0] + "][ws:" + won[1] + "]");
        for (String detail : Heading.DETAILS) {
            if (heading.details().containsKey(detail)) {
                property(DETAILS.get(detail), heading.details().get(detail));
            }
        }
        if (game.points() != 0) {
            property("RE", (game.points() > 0 ? "B+" : "W+") + Math.abs(game.points()) + (resigned(game) ? "R" : ""));
        }
        if (index == 0 && !heading.remarks().isEmpty()) {
            property("C", String.join("\n", heading.remarks()));
        }
        text.append('\n');
        game.entries().forEach(this::entry);
        text.append(")\n");
    }

    private static boolean resigned(Game game) {
        return game.entries().stream().anyMatch(entry -> entry instanceof Entry.Resignation);
    }

    /** The Crawford game is the first in which exactly one side needs a point. */
    private void rules(Rules rules, int[] won) {
        if (rules.match()) {
            property("RU", crawford(record, rules, won) ? "Crawford:CrawfordGame" : "Crawford");
        } else if (rules.jacoby() || rules.beavers()) {
            property(
                    "RU",
                    (rules.jacoby() ? "Jacoby" : "")
                            + (rules.jacoby() && rules.beavers() ? ":" : "")
                            + (rules.beavers() ? "Beavers" : ""));
        }
    }

    private static boolean crawford(GameRecord record, Rules rules, int[] won) {
        if (Math.max(won[0], won[1]) != rules.length() - 1 || won[0] == won[1]) {
            return false;
        }
        int[] before = new int[2];
        for (Game game : record.games()) {
            if (before[0] == won[0] && before[1] == won[1]) {
                return true;
            }
            if (Math.max(before[0], before[1]) == rules.length() - 1) {
                return false;
            }
            before[game.points() > 0 ? 0 : 1] += Math.abs(game.points());
        }
        return false;
    }

    private void entry(Entry entry) {
        if (entry instanceof Entry.Resignation && entry.note().isEmpty()) {
            return;
        }
        text.append(';');
        if (entry instanceof Entry.Turn) {
            Entry.Turn turn = (Entry.Turn) entry;
            property(turn.side() == 0 ? "B" : "W", turn.roll().toString().replace("-", "") + steps(turn));
        } else if (entry instanceof Entry.Cube) {
            Entry.Cube cube = (Entry.Cube) entry;
            property(cube.side() == 0 ? "B" : "W", ACTIONS.get(cube.action()));
        }
        if (!entry.note().isEmpty() || entry instanceof Entry.Remark) {
            property("C", entry.note());
        }
        text.append('\n');
    }

    private static String steps(Entry.Turn turn) {
        StringBuilder letters = new StringBuilder();
        for (Step step : turn.play().steps()) {
            letters.append(letter(step.from(), turn.side())).append(letter(step.to(), turn.side()));
        }
        return letters.toString();
    }

    private static char letter(int place, int side) {
        if (place == Planes.BAR) {
            return 'y';
        }
        if (place == Planes.OFF) {
            return 'z';
        }
        return (char) ('a' + (side == 0 ? place : 25 - place) - 1);
    }

    private void property(String name, String value) {
        text.append(name)
                .append('[')
                .append(value.replace("\\", "\\\\").replace("]", "\\]"))
                .append(']');
    }
}
