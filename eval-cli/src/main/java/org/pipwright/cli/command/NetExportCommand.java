package org.pipwright.cli.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Net to a file of its own. */
@Command(
        name = "export",
        customSynopsis = "pipwright net export NAME|FILE TARGET [--force]",
        header = "Write a net to a file.",
        description = {
            "The file is in the safetensors format, which many programs read: plain weights with a header that says where"
                    + " they come from. An existing file is replaced only once the new one is complete.",
            "",
            "A target ending in .onnx asks for the ONNX format instead. Of a net with one network for all positions"
                    + " comes one file. Else two come of it: with copy.onnx, copy-contact.onnx is the network for"
                    + " positions with contact and copy-race.onnx the one for races. Of a quick net before it come"
                    + " copy-quick.onnx, or copy-quick-contact.onnx and copy-quick-race.onnx. All take encoded"
                    + " positions and which outcomes are possible, and give the six chances."
        },
        footer = {
            "Examples:",
            "  pipwright net export standard copy.safetensors",
            "  pipwright net export standard copy.onnx"
        })
public final class NetExportCommand extends CliCommand {
    private static final String OWN = ".safetensors";
    private static final String ONNX = ".onnx";

    @Mixin
    private NetArgument net;

    @Parameters(paramLabel = "TARGET", description = "The file to write, ending in .safetensors or .onnx.")
    private String target;

    @Mixin
    private ForceOption force;

    @Spec
    private CommandSpec spec;

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
        if (target.endsWith(ONNX)) {
            Model model = net.load();
            List<OnnxPart> parts = OnnxPart.of(model, target.substring(0, target.length() - ONNX.length()), ONNX);
            List<Path> files = new ArrayList<>();
            parts.forEach(part -> files.add(checked(part.file(), OutputKind.ONNX)));
            for (int i = 0; i < parts.size(); i++) {
                OutputFile.write(files.get(i), parts.get(i).bytes().get());
                out().println("wrote " + files.get(i) + ": " + parts.get(i).shape());
            }
        } else {
            Path file = checked(target, OutputKind.NET);
            Model model = net.load();
            OutputFile.write(file, ModelFile.toBytes(model));
            out().println("wrote " + file + ": " + model.shape());
        }
        return 0;
    }

    private Path checked(String name, OutputKind kind) {
        Path file = OutputFile.checked(name);
        OutputGuard.check(
                spec.commandLine().getParseResult(), spec.positionalParameters().get(1), file, kind);
        return file;
    }
}
