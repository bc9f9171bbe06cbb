package org.pipwright.cli.command;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.roll.Roll;

/**
 * The words of a position that may have a roll behind them, as a line of a batch has: {@code start 3-1}.
 *
 * @param words what is left of them
 * @param roll the roll behind them, or else that of an option; null if there is none
 */
record RollBehind(List<String> words, Roll roll) {
    /** Digits that no position has as a word; whether they are a roll is another question. */
    private static final Pattern ROLL = Pattern.compile("(.*\\S)\\s+(\\d+-?\\d+)", Pattern.DOTALL);

    /** Takes the roll off and refuses a second one; in 'start of 15' the number is one of checkers. */
    static RollBehind of(List<String> words, Roll option) {
        Matcher behind = ROLL.matcher(String.join(" ", words).strip());
        if (!behind.matches() || behind.group(1).matches("(?s).*\\sof")) {
            return new RollBehind(words, option);
        }
        Roll roll = read(behind.group(2));
        if (option != null) {
            throw new UserError(roll + " follows the position, but --roll gives a roll too: give one of them");
        }
        return new RollBehind(List.of(behind.group(1)), roll);
    }

    private static Roll read(String text) {
        try {
            return Roll.parse(text);
        } catch (IllegalArgumentException e) {
            throw new UserError(e.getMessage());
        }
    }
}
