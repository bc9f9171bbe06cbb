package org.pipwright.cli.command;

import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Net to a file of its own. */
@Command(
        name = "export",
        customSynopsis = "pipwright net export NAME|FILE TARGET",
        header = "Write a net to a file.",
        description = {
            "The file is in the safetensors format, which many programs read: plain weights with a header that says where"
                    + " they come from. An existing file is replaced only once the new one is complete."
        },
        footer = {"Example:", "  pipwright net export first copy.safetensors"})
public final class NetExportCommand extends CliCommand {
    @Mixin
    private NetArgument net;

    @Parameters(paramLabel = "TARGET", description = "The file to write, ending in .safetensors.")
    private String target;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public NetExportCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        if (!target.endsWith(".safetensors")) {
            throw new UserError("the target '" + target + "' should end in .safetensors");
        }
        Model model = net.load();
        try {
            ModelFile.write(path(), model);
        } catch (IOException e) {
            throw new UserError("cannot write '" + target + "': its folder is missing, full or not yours to write to");
        }
        out().println("wrote " + target + ": " + model.shape());
        return 0;
    }

    private Path path() {
        try {
            return Path.of(target);
        } catch (InvalidPathException e) {
            throw new UserError("'" + target + "' is no file name: " + e.getReason());
        }
    }
}
