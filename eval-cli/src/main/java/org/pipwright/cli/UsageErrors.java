package org.pipwright.cli;

import java.util.Collection;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.text.Excerpt;
import org.pipwright.engine.text.NearWords;
import picocli.CommandLine;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;

/** What is wrong with a command line, in our own words where picocli's do not help. */
final class UsageErrors {
    /** Two slips of the finger are still the same word. */
    private static final int SLIPS = 2;

    private UsageErrors() {}

    /** The line, without {@code pipwright:} before it. */
    static String line(ParameterException e) {
        CommandLine command = e.getCommandLine();
        CommandSpec spec = command.getCommandSpec();
        return what(e, command) + "; see pipwright help"
                + spec.qualifiedName(" ").substring(spec.root().name().length());
    }

    /** A word that is not understood explains a missing one, so it comes first. */
    private static String what(ParameterException e, CommandLine command) {
        List<String> unmatched = command.getUnmatchedArguments();
        if (!unmatched.isEmpty()) {
            return notUnderstood(unmatched.get(0), command);
        }
        if (e instanceof MissingParameterException) {
            return missing((MissingParameterException) e, command);
        }
        return ErrorLines.oneLine(e.getMessage())
                .replaceFirst(
                        "^option '([^']+)'(?: \\([^)]+\\))? should be specified only once$",
                        "$1 is given more than once: give it once")
                .replaceFirst("^Invalid value for option '([^']+)'(?: \\([^)]+\\))?: ", "$1: ");
    }

    private static String notUnderstood(String word, CommandLine command) {
        String quoted = "'" + Excerpt.of(word) + "'";
        Collection<String> commands = command.getSubcommands().keySet();
        if (word.startsWith("-") && word.length() > 1) {
            return "no option " + quoted
                    + suggestion(word, command.getCommandSpec().optionsMap().keySet());
        }
        if (commands.isEmpty()) {
            return "unexpected " + quoted;
        }
        return "no command " + quoted + suggestion(word, commands) + ": use " + String.join(", ", commands);
    }

    private static String missing(MissingParameterException e, CommandLine command) {
        String needed = e.getMissing().stream().map(UsageErrors::shown).collect(Collectors.joining(" and "));
        return command.getCommandName() + " needs " + needed;
    }

    private static String shown(ArgSpec argument) {
        return argument.isOption()
                ? ((OptionSpec) argument).longestName() + " " + argument.paramLabel()
                : argument.paramLabel();
    }

    private static String suggestion(String word, Collection<String> known) {
        int least = known.stream()
                .mapToInt(name -> NearWords.slips(word, name))
                .min()
                .orElse(SLIPS + 1);
        if (least > SLIPS) {
            return "";
        }
        return known.stream()
                .filter(name -> NearWords.slips(word, name) == least)
                .collect(Collectors.joining(" or ", " (perhaps ", "?)"));
    }
}
