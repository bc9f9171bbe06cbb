package org.pipwright.cli.command;

import java.util.ArrayList;
import java.util.List;
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
        customSynopsis = "pipwright help [COMMAND]",
        header = "Show the help of a command.",
        description = "The same as COMMAND --help. Without a command: list them all.",
        footer = {"Example:", "  pipwright help rank"})
public final class HelpCommand extends CliCommand {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "COMMAND", arity = "0..*", description = "The command, as in rank or net export.")
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
        CommandLine found = spec.parent().commandLine();
        for (String name : path) {
            CommandLine next = found.getSubcommands().get(name);
            if (next == null) {
                throw new UserError("no command '" + name + "': use "
                        + String.join(", ", found.getSubcommands().keySet()));
            }
            found = next;
        }
        found.usage(out());
        return 0;
    }
}
