package org.pipwright.cli.command;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.text.Excerpt;
import picocli.CommandLine.Option;

/** Turns that are played first, so that the command is about the position after them. */
final class PlayOnOption {
    private static final Pattern TURN = Pattern.compile("\\s*([1-6]-?[1-6])\\s*+:?\\s*+(.+)", Pattern.DOTALL);

    private static final String EXAMPLE = "write a roll and its play, as in \"3-1: 8/5 6/5\"";

    @Option(
            names = "--play-on",
            paramLabel = "TURNS",
            description = "First play these turns, by both sides in turn, each as \"3-1: 8/5 6/5\", separated by"
                    + " semicolons: the command is about the position after them, seen from the side then on roll.")
    private List<String> turns = List.of();

    boolean given() {
        return !turns.isEmpty();
    }

    /** The turns as they were given, with a semicolon between two. */
    String words() {
        return turns.stream()
                .flatMap(option -> Stream.of(option.split(";", -1)))
                .map(turn -> turn.strip().replaceAll("\\s+", " "))
                .collect(Collectors.joining("; "));
    }

    /** The position after the turns, seen from the side on roll there. */
    Position from(Position start) {
        Position position = start;
        for (String option : turns) {
            for (String turn : option.split(";", -1)) {
                position = after(position, turn);
            }
        }
        return position;
    }

    private static Position after(Position position, String turn) {
        Matcher parts = TURN.matcher(turn);
        if (!parts.matches()) {
            throw new UserError("--play-on has '" + Excerpt.of(turn) + "': " + EXAMPLE);
        }
        if (position.finished()) {
            throw new UserError("--play-on: the game is over before '" + Excerpt.of(turn) + "'");
        }
        return PlayText.parse(parts.group(2), position, Roll.parse(parts.group(1)))
                .next();
    }
}
