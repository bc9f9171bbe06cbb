package org.pipwright.cli.command;

import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Map;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.network.Network;
import org.pipwright.engine.network.OnnxFile;
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
                    + " they come from. An existing file is replaced only once the new one is complete.",
            "",
            "A target ending in .onnx asks for the ONNX format instead. Two files come of it: with copy.onnx,"
                    + " copy-contact.onnx is the network for positions with contact and copy-race.onnx the one for"
                    + " races. Both take encoded positions and which outcomes are possible, and give the six chances."
        },
        footer = {"Examples:", "  pipwright net export first copy.safetensors", "  pipwright net export first copy.onnx"
        })
public final class NetExportCommand extends CliCommand {
    private static final String OWN = ".safetensors";
    private static final String ONNX = ".onnx";

    @Mixin
    private NetArgument net;

    @Parameters(paramLabel = "TARGET", description = "The file to write, ending in .safetensors or .onnx.")
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
        if (!target.endsWith(OWN) && !target.endsWith(ONNX)) {
            throw new UserError("the target '" + target + "' should end in " + OWN + " or " + ONNX);
        }
        Model model = net.load();
        try {
            write(model);
        } catch (IOException e) {
            throw new UserError("cannot write '" + target + "': its folder is missing, full or not yours to write to");
        }
        return 0;
    }

    private void write(Model model) throws IOException {
        if (target.endsWith(ONNX)) {
            writeOnnx(model.contact(), "contact", model.notes());
            writeOnnx(model.race(), "race", model.notes());
        } else {
            ModelFile.write(path(target), model);
            out().println("wrote " + target + ": " + model.shape());
        }
    }

    private void writeOnnx(Network network, String name, Map<String, String> notes) throws IOException {
        String file = target.substring(0, target.length() - ONNX.length()) + "-" + name + ONNX;
        OnnxFile.write(path(file), network, notes);
        out().println("wrote " + file + ": " + network.shape());
    }

    private static Path path(String file) {
        try {
            return Path.of(file);
        } catch (InvalidPathException e) {
            throw new UserError("'" + file + "' is no file name: " + e.getReason());
        }
    }
}
