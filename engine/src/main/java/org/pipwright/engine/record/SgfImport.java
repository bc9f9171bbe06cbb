package org.pipwright.engine.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.play.IllegalPlayException;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;
import org.pipwright.engine.text.Excerpt;
import org.pipwright.engine.text.Printable;

/** The nodes of an SGF file to a record. */
final class SgfImport {
    private static final List<String> SETUP = List.of("AB", "AW", "AE", "PL", "DI");
    private static final Pattern ROLLED = Pattern.compile("([1-6])([1-6])((?:[a-y][a-xz])*)");
    private static final Pattern RESULT = Pattern.compile("([BW])\\+(\\d{1,9})R?(?:esign)?");

    private RecordBuilder builder;
    private Heading heading;

    GameRecord read(List<List<SgfNode>> games) {
        for (List<SgfNode> game : games) {
            game(game);
        }
        return builder.build();
    }

    private void game(List<SgfNode> nodes) {
        SgfNode root = nodes.get(0);
        begin(root);
        try {
            builder.game();
        } catch (IllegalEntryException e) {
            throw root.fault(e.getMessage());
        }
        score(root);
        for (SgfNode node : nodes) {
            try {
                node(node, node == root);
            } catch (IllegalEntryException e) {
                throw node.fault(e.getMessage());
            }
        }
        result(root);
    }

    private void begin(SgfNode root) {
        if (!root.value("GM", "").strip().equals("6")) {
            throw root.fault("GM[" + Excerpt.of(root.value("GM", "")) + "]: expected GM[6], backgammon");
        }
        if (!root.value("FF", "4").strip().equals("4")) {
            throw root.fault("FF[" + Excerpt.of(root.value("FF", "")) + "]: expected FF[4]");
        }
        Heading read = heading(root, builder == null);
        if (builder == null) {
            heading = read;
            builder = new RecordBuilder(heading);
        } else if (!read.players().equals(heading.players()) || !read.rules().equals(heading.rules())) {
            throw root.fault("another match: expected games between the same players under the same rules in one file");
        }
    }

    private static Heading heading(SgfNode root, boolean first) {
        Map<String, String> details = new TreeMap<>();
        SgfText.DETAILS.forEach((detail, property) -> {
            String value = Notes.tidy(root.value(property, "").replace('#', ' '));
            if (!value.isEmpty()) {
                details.put(detail, value);
            }
        });
        List<String> remarks = first && root.has("C") ? lines(root.value("C", "")) : List.of();
        try {
            return new Heading(names(root), rules(root), details, remarks);
        } catch (IllegalArgumentException e) {
            throw root.fault(e.getMessage());
        }
    }

    /** What a record cannot hold in a name becomes a space. */
    private static List<String> names(SgfNode root) {
        List<String> names = new ArrayList<>();
        for (String property : List.of("PB", "PW")) {
            String name = Notes.tidy(root.value(property, "").replaceAll("[,:/#]", " "));
            String cut = Printable.head(name, Heading.LONGEST).strip();
            names.add(cut.isEmpty() ? (property.equals("PB") ? "Black" : "White") : cut);
        }
        return names;
    }

    private static Rules rules(SgfNode root) {
        String rules = root.value("RU", "");
        int length = number(root, "length:");
        boolean match = length > 0;
        return new Rules(match ? length : 0, !match && rules.contains("Jacoby"), !match && rules.contains("Beavers"));
    }

    /** A number of the match information; 0 if it does not say. */
    private static int number(SgfNode root, String key) {
        for (String info : root.properties().getOrDefault("MI", List.of())) {
            String value = info.startsWith(key) ? info.substring(key.length()).strip() : "";
            if (value.matches("\\d{1,9}")) {
                return Integer.parseInt(value);
            }
        }
        return 0;
    }

    private void score(SgfNode root) {
        int black = number(root, "bs:");
        int white = number(root, "ws:");
        boolean said = root.has("MI") && heading.rules().match();
        if (said && (black != builder.won(0) || white != builder.won(1))) {
            throw root.fault("the score " + black + "-" + white + ": expected " + builder.won(0) + "-" + builder.won(1)
                    + " after the games before it");
        }
    }

    private void node(SgfNode node, boolean root) {
        for (String setup : SETUP) {
            if (node.has(setup)) {
                throw node.fault(setup + ": expected a game from the start, without positions set up by hand");
            }
        }
        List<String> notes = node.has("C") && !root ? new ArrayList<>(lines(node.value("C", ""))) : new ArrayList<>();
        if (node.has("B") || node.has("W")) {
            int side = node.has("B") ? 0 : 1;
            builder.add(entry(side, node, notes.isEmpty() ? "" : notes.remove(0)));
        }
        notes.forEach(note -> builder.add(new Entry.Remark(note)));
    }

    private Entry entry(int side, SgfNode node, String note) {
        String move = node.value(side == 0 ? "B" : "W", "").strip();
        for (Map.Entry<CubeAction, String> action : SgfText.ACTIONS.entrySet()) {
            if (move.equals(action.getValue())) {
                return new Entry.Cube(side, action.getKey(), note);
            }
        }
        Matcher rolled = ROLLED.matcher(move);
        if (!rolled.matches()) {
            throw node.fault("'" + Excerpt.of(move)
                    + "': expected two dice and pairs of letters, as in 31hefe, or double, take, drop");
        }
        Roll roll = Roll.parse(rolled.group(1) + rolled.group(2));
        builder.referee().mayRoll(side, roll);
        try {
            Play play = PlayText.parse(
                    text(rolled.group(3), side), builder.referee().position(), roll);
            return new Entry.Turn(side, roll, play, note);
        } catch (IllegalPlayException e) {
            throw node.fault(e.getMessage() + "; expected " + LegalPlays.of(builder.referee(), roll));
        }
    }

    private static String text(String letters, int side) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < letters.length(); i += 2) {
            text.append(place(letters.charAt(i), side))
                    .append('/')
                    .append(place(letters.charAt(i + 1), side))
                    .append(' ');
        }
        return letters.isEmpty() ? "no play" : text.toString();
    }

    private static String place(char letter, int side) {
        if (letter == 'y') {
            return "bar";
        }
        int point = letter - 'a' + 1;
        return letter == 'z' ? "off" : Integer.toString(side == 0 ? point : 25 - point);
    }

    /** A result that the moves do not show is a resignation. */
    private void result(SgfNode root) {
        Matcher result = RESULT.matcher(Notes.tidy(root.value("RE", "")));
        if (!result.matches()) {
            return;
        }
        int side = result.group(1).equals("B") ? 0 : 1;
        int points = Integer.parseInt(result.group(2));
        Referee referee = builder.referee();
        if (!referee.over()) {
            resignation(root, 1 - side, points);
        }
        if (referee.points() != (side == 0 ? points : -points)) {
            throw root.fault("RE[" + result.group() + "]: the moves come to another result");
        }
    }

    private void resignation(SgfNode root, int side, int points) {
        int cube = builder.referee().cubeValue();
        GameResult given = null;
        for (GameResult result : GameResult.values()) {
            given = given == null && result.points() * cube == points ? result : given;
        }
        if (given == null) {
            throw root.fault(points + " points for a resignation with the cube at " + cube + ": expected once, twice or"
                    + " three times the cube");
        }
        try {
            builder.add(new Entry.Resignation(side, given, ""));
        } catch (IllegalEntryException e) {
            throw root.fault(e.getMessage());
        }
    }

    private static List<String> lines(String text) {
        List<String> lines = new ArrayList<>();
        for (String line : text.split("\n", -1)) {
            lines.add(Notes.tidy(line));
        }
        return lines;
    }
}
