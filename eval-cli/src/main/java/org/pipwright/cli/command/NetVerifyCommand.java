package org.pipwright.cli.command;

import org.pipwright.cli.console.Console;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.engine.network.Model;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Net to a verdict on its file. */
@Command(
        name = "verify",
        customSynopsis = "pipwright net verify NAME|FILE",
        header = "Check that a net's file is whole and usable.",
        description = {
            "Reads all of it: the header, every shape, every weight and the SHA-256 of the weights. If anything is wrong,"
                    + " says what and ends with exit code 2."
        },
        footer = {"Example:", "  pipwright net verify my-run/net.safetensors"})
public final class NetVerifyCommand extends CliCommand {
    @Mixin
    private NetArgument net;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public NetVerifyCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        Model model = net.verify();
        out().println("whole: " + model.shape() + ", SHA-256 of the weights "
                + NetLabel.of(net.name(), model).sha256());
        return 0;
    }
}
