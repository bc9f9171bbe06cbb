package org.pipwright.cli.command;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import picocli.CommandLine.Option;

/** The plays that a command is limited to. */
final class PlaysOption {
    @Option(
            names = "--plays",
            paramLabel = "PLAYS",
            description = "Only these plays: separate them by semicolons, or repeat the option.")
    private List<String> plays = new ArrayList<>();

    boolean given() {
        return !plays.isEmpty();
    }

    /** The plays asked for; none if all are wanted. */
    List<Play> read(Position from, Roll roll) {
        List<Play> read = plays.stream()
                .flatMap(text -> Arrays.stream(text.split(";")))
                .filter(text -> !text.isBlank())
                .map(text -> PlayText.parse(text, from, roll))
                .distinct()
                .collect(Collectors.toList());
        if (read.isEmpty() && given()) {
            throw new UserError("--plays names no play: write them like \"8/5 6/5; 24/23 13/10\"");
        }
        return read;
    }
}
