package org.pipwright.cli.command;

import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.text.Excerpt;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A script that teaches a shell the commands and options. */
@Command(
        name = "completion",
        customSynopsis = "pipwright completion bash|zsh",
        header = "Print a script for the shell, which then completes commands and options.",
        description = "Load it once in a shell, or put the line into its start-up file (.bashrc or .zshrc).",
        footer = {
            "Examples:",
            "  source <(pipwright completion bash)",
            "  source <(pipwright completion zsh)",
            "  pipwright completion bash > ~/.local/share/bash-completion/completions/pipwright"
        })
public final class CompletionCommand extends CliCommand {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "SHELL", description = "The shell: bash or zsh.")
    private String shell;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public CompletionCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        if (!shell.equals("bash") && !shell.equals("zsh")) {
            throw new UserError("no script for '" + Excerpt.of(shell) + "': use bash or zsh");
        }
        // One script does for both: in zsh it begins by loading the emulation of bash's completion.
        out().print(AutoComplete.bash("pipwright", spec.parent().commandLine()));
        return 0;
    }
}
