package org.pipwright.cli.command;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A command's name to its help. */
@Command(
        name = "help",
        customSynopsis = {"pipwright help [COMMAND]", "       pipwright help topic NAME"},
        header = "Show the help of a command, or a topic.",
        description = {
            "The same as COMMAND --help. Without a command: list them all.",
            "Topics are about what several commands share: notation, equity, cube, match and training. The word topic may be"
                    + " left out, except for cube, which is also a command."
        },
        footer = {"Examples:", "  pipwright help rank", "  pipwright help notation", "  pipwright help topic cube"})
public final class HelpCommand extends CliCommand {
    private static final String TOPIC = "topic";

    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "COMMAND",
            arity = "0..*",
            completionCandidates = TopicNames.class,
            description = "The command, as in rank or net export; or a topic.")
    private List<String> path = new ArrayList<>();

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public HelpCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        Optional<String> topic = topic();
        if (topic.isPresent()) {
            Topics.print(topic.get(), console().screen().columns(), out());
            return 0;
        }
        CommandLine found = spec.parent().commandLine();
        for (String name : path) {
            CommandLine next = found.getSubcommands().get(name);
            if (next == null) {
                boolean first = found == spec.parent().commandLine();
                throw new UserError("no command '" + name + "': use "
                        + String.join(", ", found.getSubcommands().keySet())
                        + (first ? ", or a topic: " + String.join(", ", Topics.NAMES) : ""));
            }
            found = next;
        }
        found.usage(out());
        return 0;
    }

    /** What a shell offers here. */
    static final class TopicNames implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            return Topics.NAMES.iterator();
        }
    }

    /** The topic that is asked for, if one is: commands come first, unless the word topic stands before it. */
    private Optional<String> topic() {
        if (path.isEmpty() || !path.get(0).equals(TOPIC)) {
            boolean named = path.size() == 1
                    && Topics.NAMES.contains(path.get(0))
                    && !spec.parent().subcommands().containsKey(path.get(0));
            return named ? Optional.of(path.get(0)) : Optional.empty();
        }
        if (path.size() == 2 && Topics.NAMES.contains(path.get(1))) {
            return Optional.of(path.get(1));
        }
        throw new UserError("name one topic: " + String.join(", ", Topics.NAMES));
    }
}
