package org.pipwright.cli.command;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionJson;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.text.Excerpt;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** The position that a command is about. */
final class PositionArgument {
    static final String TEXT =
            "What the side on roll has, a slash, what the opponent has, each counted from that side's own home: 5@6 is"
                    + " five checkers on the 6 point, 1@bar one on the bar; what is missing from 15 is borne off. Quotes"
                    + " are not needed.";

    static final String OTHER_FORMS = "Or: start, the JSON form, or - to read one position from standard input.";

    /** Before the checkers a side, which may look like a roll: of 12. */
    private static final String OF = "of";

    @Parameters(
            paramLabel = "POSITION",
            arity = "1..*",
            description = {TEXT, OTHER_FORMS})
    private List<String> words;

    @Mixin
    private PlayOnOption on;

    Position read(Console console) {
        return read(words, on, console);
    }

    /** The roll of an option, or else the one behind the position, which is taken off; null if there is none. */
    Roll roll(Roll option) {
        RollBehind behind = RollBehind.of(words, option);
        words = behind.words();
        return behind.roll();
    }

    /** A position as it was typed, after the turns played on from it; asks if checkers seem to be missing. */
    static Position read(List<String> words, PlayOnOption on, Console console) {
        Position typed = read(words, console.in());
        MissingCheckers.questions(typed).forEach(console.err()::println);
        return on.from(typed);
    }

    static Position read(List<String> words, InputStream in) {
        for (int i = 0; i < words.size(); i++) {
            if (roll(words.get(i)) && !(i > 0 && words.get(i - 1).equals(OF))) {
                throw new UserError("'" + words.get(i)
                        + "' is a roll, not part of a position: give one roll at a time, after --roll");
            }
        }
        if (words.size() > 1 && words.get(0).equals("start") && !words.get(1).equals(OF)) {
            throw new UserError("'start' is a complete position: what is '" + Excerpt.of(words.get(1))
                    + "' after it? Put several words of one option into quotes");
        }
        String text = String.join(" ", words).strip();
        return text.equals("-") ? parse(all(in)) : parse(text);
    }

    private static boolean roll(String word) {
        return word.matches("[1-6]-?[1-6]");
    }

    private static Position parse(String text) {
        return text.startsWith("{") ? PositionJson.parse(text) : PositionText.parse(text);
    }

    private static String all(InputStream in) {
        try {
            byte[] bytes = in.readNBytes(PositionJson.LIMIT + 1);
            String text = new String(bytes, StandardCharsets.UTF_8).strip();
            if (text.isEmpty()) {
                throw new UserError("standard input is empty: write one position to it");
            }
            if (!text.startsWith("{") && text.lines().count() > 1) {
                throw new UserError("standard input has " + text.lines().count() + " lines: write one position to it");
            }
            return text;
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read standard input", e);
        }
    }
}
