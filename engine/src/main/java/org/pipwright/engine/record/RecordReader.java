package org.pipwright.engine.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.play.IllegalPlayException;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;
import org.pipwright.engine.text.Excerpt;
import org.pipwright.engine.text.NearWords;

/** Text to a record, line by line. */
final class RecordReader {
    private static final Pattern GAME =
            Pattern.compile("game(?:\\s+(\\d{1,9}))?(?:\\s*:\\s*(\\d{1,9})\\s*-\\s*(\\d{1,9}))?");
    /** Blanks are never given back, or a line of many would be tried in as many ways. */
    private static final Pattern ROLLED = Pattern.compile("(\\d-?\\d)\\s*+:?\\s*+(.*)", Pattern.DOTALL);

    private static final String SAYINGS =
            "a roll as in 3-1: 8/5 6/5, or doubles, takes, passes, beavers, resigns, resigns gammon, resigns backgammon";

    private final HeadingReader headingReader = new HeadingReader();
    private Heading heading;
    private RecordBuilder builder;
    private int line;
    private final boolean strict;
    private final List<RecordCheck.Fault> faults = new ArrayList<>();

    /** What can be played is not known behind a mistake, up to the end of the game. */
    private boolean lost;

    /** A reader that stops at the first mistake, or goes on behind it if it is not strict. */
    RecordReader(boolean strict) {
        this.strict = strict;
    }

    GameRecord read(String text) {
        for (String each : lines(text)) {
            line++;
            line(each);
        }
        begin();
        return builder.build();
    }

    /** Finds all mistakes; without the heading there is nothing to hold games against. */
    RecordCheck check(String text) {
        for (String each : lines(text)) {
            line++;
            try {
                line(each);
            } catch (InvalidRecordException e) {
                boolean headless = builder == null && isGame(said(each));
                // What the heading lacks then, the line at fault above may have been meant to say.
                if (!headless || faults.isEmpty()) {
                    tell(e);
                }
                // Without the first line it is hardly a record.
                if (headless || line == 1) {
                    break;
                }
                lost = builder != null;
            }
        }
        if (faults.isEmpty()) {
            try {
                begin();
                return new RecordCheck(Optional.of(heading), Optional.of(builder.build()), List.of());
            } catch (InvalidRecordException e) {
                tell(e);
            }
        }
        return new RecordCheck(Optional.ofNullable(heading), Optional.empty(), List.copyOf(faults));
    }

    private static List<String> lines(String text) {
        List<String> lines = new ArrayList<>(List.of(text.split("\r\n|\n|\r", -1)));
        if (lines.get(0).startsWith("\ufeff")) {
            lines.set(0, lines.get(0).substring(1));
        }
        return lines;
    }

    /** Notes a mistake behind which reading can go on; a strict reader stops. */
    private void tell(InvalidRecordException e) {
        if (strict) {
            throw e;
        }
        boolean known = builder != null && builder.playing() && !lost;
        faults.add(new RecordCheck.Fault(e, known ? Optional.of(builder.stand()) : Optional.empty()));
    }

    private static String said(String raw) {
        int sign = comment(raw);
        return (sign >= 0 ? raw.substring(0, sign) : raw).strip();
    }

    private static boolean isGame(String said) {
        return said.equals("game") || said.matches("game\\s*[\\d:].*");
    }

    private void line(String raw) {
        for (int i = 0; i < raw.length(); i++) {
            if (Character.isISOControl(raw.charAt(i)) && raw.charAt(i) != '\t') {
                throw fault(i, "a control character: expected text");
            }
        }
        int sign = comment(raw);
        boolean has = sign >= 0;
        String note = has ? Notes.tidy(raw.substring(sign + 1)) : "";
        int at = raw.length() - raw.stripLeading().length();
        String said = said(raw);
        if (line == 1) {
            if (!said.equals(RecordText.FIRST_LINE)) {
                throw fault(
                        at,
                        "'" + Excerpt.of(said) + "': expected '" + RecordText.FIRST_LINE
                                + "', with which every record begins");
            }
            remark(!note.isEmpty(), note);
        } else if (said.isEmpty()) {
            remark(has, note);
        } else if (isGame(said)) {
            game(said, at);
            remark(!note.isEmpty(), note);
        } else if (builder == null) {
            header(said, at, note);
        } else {
            entry(said, at, note);
        }
    }

    /** Place of the sign that begins a comment: the first at the beginning of the line or behind a blank; -1 if none. */
    static int comment(String raw) {
        int sign = raw.indexOf('#');
        while (sign > 0 && raw.charAt(sign - 1) != ' ' && raw.charAt(sign - 1) != '\t') {
            sign = raw.indexOf('#', sign + 1);
        }
        return sign;
    }

    private InvalidRecordException fault(int at, String problem) {
        return new InvalidRecordException(line, at + 1, problem);
    }

    private void remark(boolean has, String note) {
        if (!has) {
            return;
        }
        if (builder == null) {
            headingReader.remark(note);
        } else if (builder.playing()) {
            // If not, the line that should have begun the first game was at fault, and has been told.
            builder.add(new Entry.Remark(note));
        }
    }

    private void header(String said, int at, String note) {
        try {
            headingReader.line(said);
        } catch (IllegalArgumentException e) {
            throw fault(at, e.getMessage());
        }
        remark(!note.isEmpty(), note);
    }

    private void begin() {
        if (builder != null) {
            return;
        }
        try {
            heading = headingReader.heading();
        } catch (IllegalArgumentException e) {
            throw fault(0, e.getMessage());
        }
        builder = new RecordBuilder(heading);
    }

    private void game(String said, int at) {
        begin();
        Matcher game = GAME.matcher(said);
        if (!game.matches()) {
            throw fault(
                    at,
                    "'" + Excerpt.of(said) + "': expected 'game " + (builder.number() + 1)
                            + "', with or without the score, as in 'game 2: 1-0'");
        }
        if (lost) {
            builder.abandon();
        }
        try {
            builder.game();
        } catch (IllegalEntryException e) {
            tell(fault(at, e.getMessage()));
            builder.abandon();
            builder.game();
        }
        if (game.group(1) != null && Integer.parseInt(game.group(1)) != builder.number()) {
            tell(fault(at + game.start(1), "game " + game.group(1) + ": expected game " + builder.number()));
        }
        score(game, at);
    }

    /** The score in the line of a game, which is believed where the game before it could not be followed. */
    private void score(Matcher game, int at) {
        boolean given = game.group(2) != null;
        int first = given ? Integer.parseInt(game.group(2)) : 0;
        int second = given ? Integer.parseInt(game.group(3)) : 0;
        if (lost) {
            lost = given ? !builder.believe(first, second) : heading.rules().match();
        } else if (given && (first != builder.won(0) || second != builder.won(1))) {
            tell(fault(
                    at + game.start(2),
                    "the score " + game.group(2) + "-" + game.group(3) + ": expected " + builder.won(0) + "-"
                            + builder.won(1) + " after the games above"));
        }
    }

    private void entry(String said, int at, String note) {
        int side = side(said);
        String rest = side < 0 ? "" : said.substring(heading.name(side).length());
        if (side < 0) {
            Optional<String> near = NearWords.beginning(said, heading.players());
            tell(fault(
                    at,
                    "'" + Excerpt.of(said) + "'"
                            + near.map(name -> " (did you mean " + name + "?)").orElse("")
                            + ": expected a line that begins with " + heading.name(0) + " or "
                            + heading.name(1) + ", or 'game'"
                            + (lost ? "" : "; next comes " + builder.referee().expected())));
            if (near.isEmpty()) {
                lost = true;
                return;
            }
            side = heading.players().indexOf(near.get());
            String[] words = said.split("\\s+", 1 + near.get().split(" ").length);
            rest = words[words.length - 1];
        }
        int column = at + said.length() - rest.stripLeading().length();
        try {
            Entry entry = entry(side, rest.strip(), column, note);
            if (!lost) {
                builder.add(entry);
            }
        } catch (IllegalEntryException e) {
            throw fault(column, e.getMessage());
        }
    }

    private int side(String said) {
        for (int side = 0; side < 2; side++) {
            String name = heading.name(side);
            if (said.equals(name) || said.startsWith(name + " ") || said.startsWith(name + "\t")) {
                return side;
            }
        }
        return -1;
    }

    private Entry entry(int side, String rest, int column, String note) {
        Matcher rolled = ROLLED.matcher(rest);
        if (rolled.matches()) {
            return turn(side, rolled, column, note);
        }
        switch (rest.toLowerCase(Locale.ROOT)) {
            case "doubles":
                return new Entry.Cube(side, CubeAction.DOUBLE, note);
            case "takes":
                return new Entry.Cube(side, CubeAction.TAKE, note);
            case "passes":
                return new Entry.Cube(side, CubeAction.PASS, note);
            case "beavers":
                return new Entry.Cube(side, CubeAction.BEAVER, note);
            case "resigns":
                return new Entry.Resignation(side, GameResult.SINGLE, note);
            case "resigns gammon":
                return new Entry.Resignation(side, GameResult.GAMMON, note);
            case "resigns backgammon":
                return new Entry.Resignation(side, GameResult.BACKGAMMON, note);
            default:
                throw fault(column, "'" + Excerpt.of(rest) + "': expected " + SAYINGS);
        }
    }

    private Entry turn(int side, Matcher rolled, int column, String note) {
        Roll roll;
        try {
            roll = Roll.parse(rolled.group(1));
        } catch (IllegalArgumentException e) {
            throw fault(column, e.getMessage());
        }
        if (lost) {
            return new Entry.Remark("");
        }
        Referee referee = builder.referee();
        referee.mayRoll(side, roll);
        try {
            return new Entry.Turn(side, roll, PlayText.parse(rolled.group(2), referee.position(), roll), note);
        } catch (IllegalPlayException e) {
            tell(fault(column + rolled.start(2), e.getMessage() + "; expected " + LegalPlays.of(referee, roll)));
            return needed(side, rolled.group(2), note);
        }
    }

    /** The turn with the roll that its play needs; if there is none, nothing is known of what follows. */
    private Entry needed(int side, String play, String note) {
        Referee referee = builder.referee();
        for (Roll roll : Roll.all()) {
            try {
                referee.mayRoll(side, roll);
                return new Entry.Turn(side, roll, PlayText.parse(play, referee.position(), roll), note);
            } catch (IllegalPlayException | IllegalEntryException e) {
                // Not with this roll.
            }
        }
        lost = true;
        return new Entry.Remark("");
    }
}
